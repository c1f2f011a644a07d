using ChannelAudit.Criteria;
using ChannelAudit.Findings;
using ChannelAudit.Reports.Figures.Drawing;
using ChannelAudit.Reports.Figures.Looks;
using ChannelAudit.Reports.Figures.Sheet;
using ChannelAudit.Reports.Wording;
using ChannelAudit.Results;

namespace ChannelAudit.Reports.Figures.Gallery;

/// <summary>The correlation of two sites in each state, with the limits of a reject.</summary>
internal sealed class StatesRow(float share) : IPlateRow
{
    public float Share => share;

    public void Draw(Picture picture, PlateColumn column, Area outer)
    {
        PairResult pair = column.Exhibit.Recording.Pairs[0];
        Panel panel = new(picture, column.Subject, outer, "Correlation of the two; broken lines: limits of a reject");
        TextStyle style = column.Subject.Note with { Color = Inks.Ink };
        (string Name, double? Value, double Limit)[] states =
        [
            ($"{pair.ChannelA} contracts", pair.Evidence.RhoActiveA, Limit("rho_active")),
            ($"{pair.ChannelB} contracts", pair.Evidence.RhoActiveB, Limit("rho_active")),
            ("rest", pair.Evidence.RhoRest, Limit("rho_rest")),
            ("rest, 300 to 450 Hz", pair.Evidence.RhoHighRest, Limit("rho_high_rest")),
        ];
        float names = states.Max(state => TextMeasure.Width(state.Name, style)) + 16;
        float left = outer.Left + names;
        ValueAxis across = new(-1, 1, left + 12, panel.Field.Right - 12);
        picture.Fill(Area.Between(outer.Left, panel.Field.Top, left, panel.Field.Bottom), Inks.Paper);
        panel.DrawBelow(new[] { -1.0, -0.5, 0, 0.5, 1 }.Select(value => (across.At(value), Quantities.Short(value))));
        float height = panel.Field.Height / states.Length;
        for (int i = 0; i < states.Length; i++)
        {
            float middle = panel.Field.Top + ((i + 0.5f) * height);
            picture.Text(states[i].Name, style, outer.Left, MathF.Round(middle - (TextMeasure.LineHeight(style) / 2)));
            DrawState(picture, style, across, middle, height, (states[i].Value, states[i].Limit));
        }
    }

    private static void DrawState(Picture picture, TextStyle style, ValueAxis across, float middle, float height, (double? Value, double Limit) state)
    {
        foreach (double limit in new[] { -state.Limit, state.Limit })
        {
            picture.Line(across.At(limit), middle - (height * 0.42f), across.At(limit), middle + (height * 0.42f), Inks.RejectLine, 2, Dash.Dashed);
        }

        if (state.Value is not { } rho)
        {
            picture.TextAround("not known", style, across.At(0), middle);
            return;
        }

        picture.Line(across.At(0), middle, across.At(rho), middle, Inks.Ink, 3);
        picture.Disc(Area.Around(across.At(rho), middle, 12, 12), Inks.Ink, Inks.Ink, 1);
        TextStyle bold = style with { Bold = true };
        string text = Quantities.Short(Math.Round(rho, 2) + 0.0);

        // On the far side of zero there is always room.
        float centre = rho >= 0 ? across.At(0) - 10 - (TextMeasure.Width(text, bold) / 2) : across.At(0) + 10 + (TextMeasure.Width(text, bold) / 2);
        picture.TextAround(text, bold, centre, middle);
    }

    private static double Limit(string measure) => DefaultCriteria.All.For(ReasonCode.Bridge).Reject
        .SelectMany(set => set.Limits)
        .First(limit => string.Equals(limit.Measure, measure, StringComparison.Ordinal))
        .Value;
}
