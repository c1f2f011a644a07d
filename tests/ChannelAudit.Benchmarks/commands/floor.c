/* The least that the numbers of channelaudit screen cost: C and FFTW, one thread, double precision.
 *
 *   floor RECORDING.edf TRIALS MAINS_HZ
 *
 * reads 16-bit EDF of one rate; transforms the same half-overlapping seconds (mean removed, periodic Hann) of the whole recording and of every
 * trial; sums auto-spectra of all channels and cross-spectra of all pairs; and looks at every sample once for the whole and once for each trial:
 * extremes, rails and runs at them, runs of equal codes, still blocks of 50 ms, ten means a second and their median. TRIALS holds a line "first length" in
 * samples for each trial. Prints a table: scope, channels, measure, value. Samples stay codes until they are scaled for a transform or a mean.
 *
 *   cc -O3 -march=native -o floor floor.c -lfftw3 -lm
 */
#include <complex.h>
#include <fcntl.h>
#include <fftw3.h>
#include <math.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <unistd.h>

enum { MOST_CHANNELS = 128, PARTS = 10 };

typedef struct {
    char label[17];
    double low, high, code_low, code_high, step;
    int length;
    size_t offset;
} Signal;

typedef struct {
    const char *bytes;
    size_t header, record;
    long records;
    int channels, rate;
    Signal signal[MOST_CHANNELS];
} Recording;

/* What one look over some samples shows. */
typedef struct {
    int least, greatest;
    long at_rail, rail_run, longest_rail_run, flat, equal_run, longest_flat, still_blocks;
    long seconds;
    double *levels;
} Scan;

static int length, hop, bins;
static double *window, scale;
static double *in;
static fftw_complex *out;
static fftw_plan plan;

static void fail(const char *what)
{
    fprintf(stderr, "floor: %s\n", what);
    exit(1);
}

static double number(const char *at, int width)
{
    char text[32];
    memcpy(text, at, width);
    text[width] = 0;
    return atof(text);
}

static Recording open_edf(const char *path)
{
    Recording r = {0};
    struct stat status;
    int file = open(path, O_RDONLY);
    if (file < 0 || fstat(file, &status) != 0) fail("no such file");
    r.bytes = mmap(NULL, status.st_size, PROT_READ, MAP_PRIVATE, file, 0);
    if (r.bytes == MAP_FAILED) fail("cannot map the file");
    posix_madvise((void *)r.bytes, status.st_size, POSIX_MADV_SEQUENTIAL);
    int all = (int)number(r.bytes + 252, 4);
    r.header = (size_t)number(r.bytes + 184, 8);
    r.records = (long)number(r.bytes + 236, 8);
    double seconds = number(r.bytes + 244, 8);
    const char *h = r.bytes + 256;
    for (int i = 0; i < all; i++) {
        int samples = (int)number(h + (size_t)all * 216 + 8 * i, 8);
        if (memcmp(h + 16 * i, "EDF Annotations ", 16) != 0) {
            Signal *s = &r.signal[r.channels++];
            memcpy(s->label, h + 16 * i, 16);
            for (int k = 15; k >= 0 && s->label[k] == ' '; k--) s->label[k] = 0;
            s->low = number(h + (size_t)all * 104 + 8 * i, 8);
            s->high = number(h + (size_t)all * 112 + 8 * i, 8);
            s->code_low = number(h + (size_t)all * 120 + 8 * i, 8);
            s->code_high = number(h + (size_t)all * 128 + 8 * i, 8);
            s->step = (s->high - s->low) / (s->code_high - s->code_low);
            s->length = samples;
            s->offset = r.record;
            r.rate = (int)(samples / seconds);
        }
        r.record += 2 * (size_t)samples;
    }
    return r;
}

/* Copies codes of a channel: a record holds a whole number of its samples. */
static void read_codes(const Recording *r, int channel, long first, long count, int16_t *to)
{
    const Signal *s = &r->signal[channel];
    while (count > 0) {
        long record = first / s->length, within = first % s->length, some = s->length - within;
        if (some > count) some = count;
        memcpy(to, r->bytes + r->header + record * r->record + s->offset + 2 * within, 2 * some);
        to += some;
        first += some;
        count -= some;
    }
}

/* Transforms one second: mean removed in codes, scaled with the window. */
static void transform(const int16_t *restrict codes, double step, fftw_complex *spectrum)
{
    long sum = 0;
    for (int i = 0; i < length; i++) sum += codes[i];
    double mean = (double)sum / length;
    for (int i = 0; i < length; i++) in[i] = (codes[i] - mean) * step * window[i];
    fftw_execute_dft_r2c(plan, in, spectrum);
}

static void add_auto(double *restrict sum, const fftw_complex *x)
{
    const double *v = (const double *)x;
    for (int k = 0; k < bins; k++) sum[k] += v[2 * k] * v[2 * k] + v[2 * k + 1] * v[2 * k + 1];
}

static void add_cross(double *restrict sum, const fftw_complex *x, const fftw_complex *y)
{
    const double *a = (const double *)x, *b = (const double *)y;
    for (int k = 0; k < bins; k++) {
        sum[2 * k] += a[2 * k] * b[2 * k] + a[2 * k + 1] * b[2 * k + 1];
        sum[2 * k + 1] += a[2 * k] * b[2 * k + 1] - a[2 * k + 1] * b[2 * k];
    }
}

static void add_block(Scan *s, const int16_t *codes, int count, const Signal *signal)
{
    int low = (int)signal->code_low + 1, high = (int)signal->code_high - 1, still = length / 20, least_run = length / 40;
    for (int from = 0; from < count; from += still) {
        int to = from + still < count ? from + still : count, least = codes[from], greatest = codes[from];
        for (int i = from; i < to; i++) {
            least = codes[i] < least ? codes[i] : least;
            greatest = codes[i] > greatest ? codes[i] : greatest;
        }
        s->least = least < s->least ? least : s->least;
        s->greatest = greatest > s->greatest ? greatest : s->greatest;
        s->still_blocks += to - from == still && greatest - least <= 1;
        if (least > low && greatest < high) {
            s->rail_run = 0;
            continue;
        }
        for (int i = from; i < to; i++) {
            if (codes[i] > low && codes[i] < high) {
                s->rail_run = 0;
            } else {
                s->at_rail++;
                if (++s->rail_run > s->longest_rail_run) s->longest_rail_run = s->rail_run;
            }
        }
    }
    /* A run of n equal codes covers every n-th sample. */
    for (int probe = least_run - 1; probe < count; probe += least_run - 1) {
        if (codes[probe - 1] != codes[probe]) continue;
        int from = probe - 1, to = probe + 1;
        while (from > 0 && codes[from - 1] == codes[probe]) from--;
        while (to < count && codes[to] == codes[probe]) to++;
        if (to - from >= least_run) {
            s->flat += to - from;
            if (to - from > s->longest_flat) s->longest_flat = to - from;
        }
        if (to - 1 > probe) probe = to - 1 - (to - 1) % (least_run - 1);
    }
}

static int ascending(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static void add_level(Scan *s, const int16_t *codes, const Signal *signal)
{
    double means[PARTS];
    int part = length / PARTS;
    for (int p = 0; p < PARTS; p++) {
        long sum = 0;
        for (int i = 0; i < part; i++) sum += codes[p * part + i];
        means[p] = signal->low + ((double)sum / part - signal->code_low) * signal->step;
    }
    qsort(means, PARTS, sizeof(double), ascending);
    s->levels[s->seconds++] = (means[PARTS / 2 - 1] + means[PARTS / 2]) / 2;
}

static char is_line[1 << 16];
static int is_in(int k, double from, double to)
{
    double hz = (double)k * hop * 2 / length;
    return hz >= from && hz <= to && !is_line[k];
}

static double quantile(const double *sorted, long count, double p)
{
    double at = (count - 1) * p;
    long below = (long)at;
    return below + 1 < count ? sorted[below] + (at - below) * (sorted[below + 1] - sorted[below]) : sorted[below];
}

static void print_scan(const char *scope, const Signal *signal, Scan *s, long count)
{
    printf("%s\t%s\tclipped\t%.12g\n", scope, signal->label, 100.0 * s->at_rail / count);
    printf("%s\t%s\tclipped_run\t%.12g\n", scope, signal->label, 1000.0 * s->longest_rail_run / length);
    if (s->still_blocks == 0) {
        printf("%s\t%s\tflat\t%.12g\n", scope, signal->label, 100.0 * s->flat / count);
        printf("%s\t%s\tflat_run\t%.12g\n", scope, signal->label, 1000.0 * s->longest_flat / length);
    }
    qsort(s->levels, s->seconds, sizeof(double), ascending);
    printf("%s\t%s\tdrift_range\t%.12g\n", scope, signal->label, quantile(s->levels, s->seconds, 0.95) - quantile(s->levels, s->seconds, 0.05));
}

static void print_power(const char *scope, const Signal *signal, const double *power, long segments)
{
    double emg = 0, low = 0, top = 0, middle = 0;
    int open = 0, all = 0, tops = 0, middles = 0;
    double to = 450 < 0.45 * length ? 450 : 0.45 * length;
    for (int k = 0; k < bins; k++) {
        double d = power[k] * scale / segments * (k == 0 || k == bins - 1 ? 1 : 2);
        all += k >= 20 && k <= to;
        if (is_in(k, 20, to)) emg += d, open++;
        if (k >= 2 && k <= 15) low += d;
        if (is_in(k, 0.8 * to, to)) top += d, tops++;
        if (is_in(k, 80, 150)) middle += d, middles++;
    }
    printf("%s\t%s\temg_rms\t%.12g\n", scope, signal->label, sqrt(emg * all / open));
    printf("%s\t%s\tlowfreq_rms\t%.12g\n", scope, signal->label, sqrt(low));
    if (strcmp(scope, "all") != 0) printf("%s\t%s\twhiteness\t%.12g\n", scope, signal->label, top / tops / (middle / middles));
}

static void print_pair(const char *scope, const Recording *r, int a, int b, const double *cross, const double *pa, const double *pb)
{
    double re = 0, aa = 0, bb = 0, re_high = 0, aa_high = 0, bb_high = 0;
    double *coherence = malloc(bins * sizeof(double));
    int n = 0;
    for (int k = 1; k < bins - 1; k++) {
        if (is_in(k, 30, 250)) {
            re += cross[2 * k], aa += pa[k], bb += pb[k];
            coherence[n++] = (cross[2 * k] * cross[2 * k] + cross[2 * k + 1] * cross[2 * k + 1]) / (pa[k] * pb[k]);
        }
        if (is_in(k, 300, 450)) re_high += cross[2 * k], aa_high += pa[k], bb_high += pb[k];
    }
    qsort(coherence, n, sizeof(double), ascending);
    printf("%s\t%s\t%s\trho\t%.12g\n", scope, r->signal[a].label, r->signal[b].label, re / sqrt(aa * bb));
    printf("%s\t%s\t%s\trho_high\t%.12g\n", scope, r->signal[a].label, r->signal[b].label, re_high / sqrt(aa_high * bb_high));
    printf("%s\t%s\t%s\tdistance\t%.12g\n", scope, r->signal[a].label, r->signal[b].label, 1 - 2 * fabs(re) / (aa + bb));
    printf("%s\t%s\t%s\tcoherence\t%.12g\n", scope, r->signal[a].label, r->signal[b].label, quantile(coherence, n, 0.5));
    free(coherence);
}

/* One scope, the whole or a trial: spectra, cross-spectra and a scan of samples of all channels. */
static void measure(const Recording *r, const char *scope, long first, long count)
{
    int n = r->channels, pairs = n * (n - 1) / 2;
    long chunk = (long)length * 16, segments = 0;
    double *power = calloc((size_t)n * bins, sizeof(double)), *cross = calloc((size_t)pairs * bins * 2, sizeof(double));
    int16_t *codes = malloc((size_t)n * (chunk + length) * sizeof(int16_t));
    Scan *scans = calloc(n, sizeof(Scan));
    for (int c = 0; c < n; c++) {
        scans[c].least = 32767, scans[c].greatest = -32768;
        scans[c].levels = malloc((count / length + 1) * sizeof(double));
    }
    /* Blocks of 16 s and the half second behind them, so that the last segment of each block is whole. */
    for (long from = 0; from < count; from += chunk) {
        long some = count - from < chunk ? count - from : chunk, with = count - from < chunk + hop ? count - from : chunk + hop;
        for (int c = 0; c < n; c++) {
            int16_t *own = codes + c * (chunk + length);
            read_codes(r, c, first + from, with, own);
            add_block(&scans[c], own, (int)some, &r->signal[c]);
            for (long at = 0; at + length <= some; at += length) add_level(&scans[c], own + at, &r->signal[c]);
        }
        for (long at = 0; at < some && at + length <= with; at += hop, segments++) {
            for (int c = 0; c < n; c++) {
                transform(codes + c * (chunk + length) + at, r->signal[c].step, out + (size_t)c * (bins + 1));
                add_auto(power + (size_t)c * bins, out + (size_t)c * (bins + 1));
            }
            for (int a = 0, p = 0; a < n; a++)
                for (int b = a + 1; b < n; b++, p++)
                    add_cross(cross + (size_t)p * bins * 2, out + (size_t)a * (bins + 1), out + (size_t)b * (bins + 1));
        }
    }
    for (int c = 0; c < n; c++) {
        print_power(scope, &r->signal[c], power + (size_t)c * bins, segments);
        print_scan(scope, &r->signal[c], &scans[c], count);
        free(scans[c].levels);
    }
    if (count >= 2L * length)
        for (int a = 0, p = 0; a < n; a++)
            for (int b = a + 1; b < n; b++, p++)
                print_pair(scope, r, a, b, cross + (size_t)p * bins * 2, power + (size_t)a * bins, power + (size_t)b * bins);
    free(power), free(cross), free(codes), free(scans);
}

static void prepare(const Recording *r, double mains)
{
    length = r->rate, hop = length / 2, bins = length / 2 + 1;
    window = malloc(length * sizeof(double));
    double squares = 0;
    for (int i = 0; i < length; i++) {
        window[i] = 0.5 - 0.5 * cos(2 * M_PI * i / length);
        squares += window[i] * window[i];
    }
    scale = 1 / (r->rate * squares);
    in = fftw_alloc_real(length);
    out = fftw_alloc_complex((size_t)r->channels * (bins + 1));
    plan = fftw_plan_dft_r2c_1d(length, in, out, FFTW_MEASURE);
    for (int h = 1; h * mains < length / 2 + 2; h++)
        for (int k = (int)floor(h * mains + 0.5) - 2; k <= (int)floor(h * mains + 0.5) + 2; k++)
            if (k < bins) is_line[k] = 1;
}

int main(int count, char **arguments)
{
    if (count != 4) fail("usage: floor RECORDING.edf TRIALS MAINS_HZ");
    Recording r = open_edf(arguments[1]);
    prepare(&r, atof(arguments[3]));
    measure(&r, "all", 0, r.records * r.signal[0].length);
    FILE *trials = fopen(arguments[2], "r");
    if (!trials) fail("no trials");
    char scope[16];
    long first, samples;
    for (int number = 1; fscanf(trials, "%ld %ld", &first, &samples) == 2; number++) {
        snprintf(scope, sizeof scope, "%d", number);
        measure(&r, scope, first, samples);
    }
    return 0;
}
