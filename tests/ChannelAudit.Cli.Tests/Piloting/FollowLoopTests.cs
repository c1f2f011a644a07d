using ChannelAudit.Cli.Piloting;
using ChannelAudit.TestKit;
using Xunit;

namespace ChannelAudit.Cli.Tests.Piloting;

public sealed class FollowLoopTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly QuickClock _clock = new();
    private readonly List<string> _shown = [];
    private readonly List<string> _notYet = [];

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task ItLooksWheneverTheFileHasGrownAndOnceMoreAtTheEnd()
    {
        string file = _folder.Write("live.txt", "1");
        _clock.OnPause = pause =>
        {
            if (pause <= 3)
            {
                File.AppendAllText(file, "1");
            }
        };

        await Follow(file, isGrowing => $"{new FileInfo(file).Length} {isGrowing}");

        Assert.Equal(["1 True", "2 True", "3 True", "4 True", "4 False"], _shown);
    }

    [Fact]
    public async Task AFileThatCannotBeReadYetIsWaitedFor()
    {
        string file = _folder.Write("live.txt", "1");
        _clock.OnPause = pause => File.AppendAllText(file, pause == 1 ? "1" : string.Empty);

        await Follow(file, _ => new FileInfo(file).Length == 1 ? throw Torn() : "ready");

        Assert.Equal(["torn"], _notYet);
        Assert.Equal(["ready", "ready"], _shown);
    }

    [Fact]
    public async Task AFileThatIsNotThereIsWaitedForHoweverLong()
    {
        string file = _folder.In("live.txt");
        _clock.OnPause = pause =>
        {
            if (pause == 50)
            {
                File.WriteAllText(file, "1");
            }
        };

        await Follow(file, isGrowing => $"{File.ReadAllText(file)} {isGrowing}");

        Assert.Equal(50, _notYet.Count(word => string.Equals(word, "not there", StringComparison.Ordinal)));
        Assert.Equal(["1 True", "1 False"], _shown);
    }

    [Fact]
    public async Task WaitingEndsWhenItIsCancelled()
    {
        using CancellationTokenSource cancel = new();
        _clock.OnPause = _ => cancel.Cancel();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Follow(_folder.In("live.txt"), _ => "shown", cancel.Token));
        Assert.Empty(_shown);
    }

    [Fact]
    public async Task AFileThatNeverCanBeReadIsAnErrorInTheEnd()
    {
        string file = _folder.Write("live.txt", "1");
        ChannelAuditException fault = await Assert.ThrowsAsync<ChannelAuditException>(() => Follow(file, _ => throw Torn()));

        Assert.Equal("torn", fault.Message);
    }

    [Fact]
    public async Task PausesAreNineTimesAsLongAsTheWork()
    {
        string file = _folder.Write("live.txt", "1");
        await Follow(file, _ =>
        {
            _clock.Pass(TimeSpan.FromSeconds(2));
            return "done";
        });

        Assert.Equal(TimeSpan.FromSeconds(18), _clock.Pauses[0]);
        Assert.All(_clock.Pauses.Skip(1), pause => Assert.Equal(TimeSpan.FromSeconds(3), pause));
    }

    [Fact]
    public async Task WhatHasGrownInTheLongPauseAfterALongLookIsLookedAtAgain()
    {
        string file = _folder.Write("live.txt", "1");
        _clock.OnPause = pause => File.AppendAllText(file, pause <= 5 ? "1" : string.Empty);

        await Follow(file, isGrowing =>
        {
            _clock.Pass(TimeSpan.FromSeconds(20));
            return $"{new FileInfo(file).Length} {isGrowing}";
        });

        Assert.Equal(["1 True", "2 True", "3 True", "4 True", "5 True", "6 True", "6 False"], _shown);
    }

    [Fact]
    public async Task CancellingEndsItAtOnce()
    {
        string file = _folder.Write("live.txt", "1");
        using CancellationTokenSource cancel = new();
        _clock.OnPause = _ => cancel.Cancel();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Follow(file, _ => "shown", cancel.Token));
        Assert.Equal(["shown"], _shown);
    }

    [Fact]
    public void TheSameTextIsShownOnceAndATerminalIsClearedBefore()
    {
        using StringWriter output = new();
        SameScreen screen = new(output, isTerminal: true);
        screen.Show("one\n");
        screen.Show("one\n");
        screen.Show("two\n");

        Assert.Equal("\u001b[H\u001b[Jone\n\u001b[H\u001b[Jtwo\n", output.ToString());
    }

    [Fact]
    public void WithoutATerminalNothingIsCleared()
    {
        using StringWriter output = new();
        SameScreen screen = new(output, isTerminal: false);
        screen.Show("one\n");
        screen.Show("two\n");

        Assert.Equal("one\n\ntwo\n", output.ToString());
    }

    private static ChannelAuditException Torn() => new(FaultKind.Recording, "torn", "wait");

    private Task Follow(string file, Func<bool, string> look, CancellationToken cancel = default) =>
        new FollowLoop(file, look, _shown.Add, fault => _notYet.Add(fault.Message), () => _notYet.Add("not there"), _clock).RunAsync(cancel);

    /// <summary>A clock whose pauses are over as soon as they begin.</summary>
    private sealed class QuickClock : TimeProvider
    {
        private long _now;

        public List<TimeSpan> Pauses { get; } = [];

        public Action<int>? OnPause { get; set; }

        public override long TimestampFrequency => TimeSpan.TicksPerSecond;

        public override long GetTimestamp() => _now;

        public void Pass(TimeSpan time) => _now += time.Ticks;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            Pauses.Add(dueTime);
            OnPause?.Invoke(Pauses.Count);
            Pass(dueTime);
            ThreadPool.QueueUserWorkItem(_ => callback(state));
            return new Over();
        }

        private sealed class Over : ITimer
        {
            public bool Change(TimeSpan dueTime, TimeSpan period) => true;

            public void Dispose()
            {
            }

            public ValueTask DisposeAsync() => ValueTask.CompletedTask;
        }
    }
}
