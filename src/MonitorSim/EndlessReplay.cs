using System.Security.Cryptography;
using System.Text;
using MonitorSim.Monitors;
using MonitorSim.Plans;
using MonitorSim.Replays;

namespace MonitorSim;

/// <summary>A replay of samples without end, in memory that does not grow: each step tells what it brought, and keeps only the newest samples. It can be saved and resumed, to the same bits.</summary>
/// <remarks>What needs a whole recording it does not tell: headroom, and what would have avoided a trip. A number stands for the shortest decimal that reads back as it. A plan must state every
/// unit, and the gap, if there is to be any. Samples and cycles are counted up to 2,147,483,647: 24 days at 1 kHz.</remarks>
public sealed class EndlessReplay
{
    /// <summary>So many samples gather before the oldest are let go, all at once.</summary>
    private const int Block = 4096;
    private const string Mark = "MonitorSim checkpoint 1";
    private static readonly AvoidedBy NotAsked = new(null, null, null, false);
    private static readonly ReplayNews Nothing = new([], [], [], [], []);

    private readonly Plan _plan;
    private readonly int _block;
    private readonly SampleFeed _feed;
    private readonly int _looksBack;
    private int _letGo;

    /// <summary>Begins a replay.</summary>
    /// <exception cref="InputException">The plan is wrong, trips on gaps without saying what a gap is, or simulates motion.</exception>
    public EndlessReplay(Plan plan) : this(plan, Block) { }

    /// <param name="plan">The plan.</param>
    /// <param name="block">So many samples gather before the oldest are let go, all at once.</param>
    internal EndlessReplay(Plan plan, int block)
    {
        (_plan, _feed, _block) = (plan, new SampleFeed(plan), block);
        if (plan.Motion == MotionSource.Simulated)
            throw new InputException(new Problem("motion", "a replay without end follows its samples, and simulates no motion", "leave out \"motion\""));
        _looksBack = _feed.Engine.Channels.Values.Max(channels => channels.LooksBack);
    }

    /// <summary>The columns of numbers that every sample must bring.</summary>
    public IEnumerable<string> Columns => _feed.Inputs.Columns;

    /// <summary>The state of an axis after the latest cycle.</summary>
    /// <exception cref="KeyNotFoundException">There is no such axis.</exception>
    public AxisState StateOf(string axis) => _feed.Engine.Reactors[axis].State;

    /// <summary>The state of a monitor, or of a stop that compares something, after the latest cycle.</summary>
    /// <exception cref="InvalidOperationException">There is no such monitor.</exception>
    public MonitorState StateOf(string axis, string monitor) => _feed.Engine.RunOf(axis, monitor).Chain.State;

    /// <summary>How often each monitor was requested and tripped and how long it watched (s), so far.</summary>
    public IReadOnlyList<Coverage> Coverage => [.. ResultBuilder.Coverage(_feed.Engine)];

    /// <summary>Takes the next sample and runs the cycles that can be run.</summary>
    /// <param name="time">Its time, ns, rising; times count from the first sample.</param>
    /// <param name="numbers">One number a column, NaN where it is missing.</param>
    /// <param name="signals">The signals by name; one that is left out holds its last value. Windows need none.</param>
    /// <returns>What those cycles brought.</returns>
    /// <exception cref="InputException">A time that does not rise, a column that is not given, a missing value or a gap that the plan rejects.</exception>
    public ReplayNews Step(long time, IReadOnlyDictionary<string, double> numbers, IReadOnlyDictionary<string, bool>? signals = null)
    {
        _feed.Step(time, numbers, signals);
        _feed.Inputs.Gaps.Check(_plan, "samples");
        var news = TakeNews();
        if (_feed.Seen - _looksBack - 1 - _letGo >= _block) LetGo(_feed.Seen - _looksBack - 1);
        return news;
    }

    /// <summary>Runs the last cycles, and ends what is still open.</summary>
    /// <returns>What that brought.</returns>
    /// <exception cref="InputException">There was no sample.</exception>
    public ReplayNews Finish()
    {
        _feed.End("samples");
        foreach (var run in _feed.Engine.Runs) run.Finish(_feed.Engine.Done);
        return TakeNews();
    }

    /// <summary>Writes all that the replay needs to go on.</summary>
    public void Save(Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        _feed.Engine.ForgetNews();
        using var bytes = new MemoryStream();
        using (var writer = new BinaryWriter(bytes, Encoding.UTF8, leaveOpen: true)) Carry(new(writer));
        stream.Write(SHA256.HashData(bytes.GetBuffer().AsSpan(0, (int)bytes.Length)));
        bytes.WriteTo(stream);
    }

    /// <summary>Goes on where a replay was saved.</summary>
    /// <param name="plan">The plan with which it began.</param>
    /// <param name="stream">What <see cref="Save"/> wrote, to its end.</param>
    /// <exception cref="InputException">It is not whole, is no checkpoint, or belongs to another plan.</exception>
    public static EndlessReplay Resume(Plan plan, Stream stream) => Resume(plan, stream, Block);

    internal static EndlessReplay Resume(Plan plan, Stream stream, int block)
    {
        ArgumentNullException.ThrowIfNull(stream);
        using var bytes = new MemoryStream();
        stream.CopyTo(bytes);
        var all = bytes.GetBuffer().AsSpan(0, (int)bytes.Length);
        if (all.Length < SHA256.HashSizeInBytes || !SHA256.HashData(all[SHA256.HashSizeInBytes..]).AsSpan().SequenceEqual(all[..SHA256.HashSizeInBytes]))
            throw new InputException(new Problem("checkpoint", "it is no checkpoint, or not whole", "give the bytes that Save wrote, all of them"));
        bytes.Position = SHA256.HashSizeInBytes;
        var replay = new EndlessReplay(plan, block);
        using var reader = new BinaryReader(bytes, Encoding.UTF8, leaveOpen: true);
        replay.Carry(new(reader));
        return replay;
    }

    private void Carry(Checkpoint checkpoint)
    {
        var plan = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(PlanWriter.Write(_plan))));
        if (checkpoint.Of(Mark) != Mark)
            throw new InputException(new Problem("checkpoint", "it was written by another version", $"give one that begins with '{Mark}'"));
        if (checkpoint.Of(plan) != plan)
            throw new InputException(new Problem("checkpoint", "it belongs to another plan", "resume with the plan with which the replay began"));
        _letGo = checkpoint.Of(_letGo);
        _feed.Carry(checkpoint);
    }

    private void LetGo(int before)
    {
        _feed.Engine.ForgetNews();
        _feed.Engine.LetGo(before);
        _feed.Inputs.LetGo(before);
        _letGo = before;
    }

    private ReplayNews TakeNews()
    {
        var engine = _feed.Engine;
        if (!engine.HasNews) return Nothing;
        var evidence = new Evidence(engine.Clock, engine.Done);
        var news = new ReplayNews(
            ResultBuilder.Ordered(engine.Trips.Select(note => evidence.Of(note, NotAsked))),
            ResultBuilder.Ordered(engine.Runs.SelectMany(run => run.Excursions).Select(ResultBuilder.Excursion)),
            [.. ResultBuilder.Outputs(engine).Where(output => output.Edges.Count > 0)],
            [.. ResultBuilder.States(engine).Where(states => states.Changes.Count > 0)],
            ResultBuilder.Ordered(engine.Events));
        engine.ForgetNews();
        return news;
    }
}

/// <summary>What some cycles of an <see cref="EndlessReplay"/> brought, each list in the order of a <see cref="ReplayResult"/>.</summary>
/// <param name="Trips">The trips; what would have avoided them is not known.</param>
/// <param name="Excursions">The runs over a limit that ended.</param>
/// <param name="Outputs">The outputs that changed.</param>
/// <param name="States">The axes whose state changed.</param>
/// <param name="Events">The event log.</param>
public sealed record ReplayNews(IReadOnlyList<Trip> Trips, IReadOnlyList<Excursion> Excursions, IReadOnlyList<OutputTimeline> Outputs, IReadOnlyList<StateTimeline> States,
    IReadOnlyList<ReplayEvent> Events);
