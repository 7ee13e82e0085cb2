using System.Text;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Replays;

namespace MonitorSim.Tuning;

/// <summary>Reads back what <see cref="TuneJson"/> wrote, so that parts tuned on several machines can be joined.</summary>
public static class TuneReader
{
    /// <summary>Reads a part from a file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="InputException">No such file, or not what <c>tune --json</c> writes: all that is wrong, with file, line and column.</exception>
    public static TuneResult Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        try
        {
            return Parse(File.ReadAllText(path, new UTF8Encoding(false)), path);
        }
        catch (Exception wrong) when (wrong is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new InputException(new Problem(path, "there is no such file", "name a file that tune --json wrote"));
        }
        catch (Exception wrong) when (wrong is IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new InputException(new Problem(path, $"the file cannot be read ({wrong.Message})", "name a file that tune --json wrote"));
        }
    }

    /// <summary>Reads a part from text.</summary>
    /// <param name="text">What <c>tune --json</c> wrote.</param>
    /// <param name="fileName">What messages call it.</param>
    /// <exception cref="InputException">It is not what <c>tune --json</c> writes: all that is wrong.</exception>
    public static TuneResult Parse(string text, string fileName = "part")
    {
        ArgumentNullException.ThrowIfNull(text);
        var problems = new List<Problem>();
        if (JsonTree.Read(text, fileName) is not JsonTree.Object root)
            throw new InputException(new Problem($"{fileName}(1,1)", "this is no tuning result", "name a file that tune --json wrote"));
        if (root.Find("tune") is not JsonTree.Number { Value: "1" })
            throw new InputException(new Problem(FormattableString.Invariant($"{fileName}({root.Line},{root.Column})"), "this is no tuning result: it lacks \"tune\": 1", "name a file that tune --json wrote"));
        var result = Result(new(root, fileName, problems));
        return problems.Count == 0 ? TuneJoin.Merge([result]).WithBounds() : throw new InputException(problems);
    }

    private static TuneResult Result(JsonFields fields)
    {
        var recordings = fields.List("recordings", r => new TunedRecording(r.Text("trace"), r.OptionalText("sha256"), r.Count("samples"), r.Seconds("duration"), r.Seconds("longestStep")));
        var known = recordings.Select(recording => recording.Trace).ToHashSet(StringComparer.Ordinal);
        return new()
        {
            Plan = Plan(fields.Fields("plan")),
            Recordings = recordings,
            Monitors = fields.List("monitors", limit => Limit(limit, known)),
            Phases = fields.List("phases", Phases),
        };
    }

    private static TunedPlan Plan(JsonFields? fields) => fields is null
        ? new("", null, null, 0, 0)
        : new(fields.Text("title"), fields.OptionalText("sha256"), fields.OptionalSeconds("cycle"), fields.Seconds("inputDelay"), fields.Seconds("reactionDelay"));

    private static TunedLimit Limit(JsonFields fields, HashSet<string> recordings)
    {
        string Recording(JsonFields of)
        {
            var trace = of.Text("trace");
            if (!recordings.Contains(trace)) of.Report("trace", $"'{trace}' is not among the recordings");
            return trace;
        }

        var limit = new TunedLimit
        {
            Axis = fields.Text("axis"),
            Monitor = fields.Text("monitor"),
            Function = fields.Text("function"),
            Side = fields.Text("side"),
            Level = fields.OptionalCount("level"),
            Unit = fields.Text("unit"),
            Written = fields.Text("written"),
            Reaction = Reaction(fields),
            Filter = fields.Seconds("filter"),
            Limit = fields.Number("limit"),
            Critical = fields.OptionalNumber("critical"),
            FilterAbove = fields.OptionalSeconds("filterAbove"),
            DelayAbove = fields.OptionalSeconds("delayAbove"),
            NoDelayHelps = fields.Flag("noDelayHelps"),
            Frontier = fields.List("frontier", step => new FrontierStep(step.Seconds("filter"), step.Number("limit"), step.Seconds("from"), step.Seconds("until"), Recording(step))),
            Runs = fields.List("runs", run => new RunCritical(Recording(run), run.OptionalNumber("critical"))),
            Bounds = LimitBounds.Of([]),
        };
        if (!Quantity.TryParse(limit.Written, out _, out var error)) fields.Report("written", error!);
        if (!IsStaircase(limit)) fields.Report("frontier", "the steps of this frontier do not fall");
        if (limit.Deciding?.Limit != limit.Critical) fields.Report("critical", "the critical limit is not that of the frontier");
        return limit;
    }

    private static RunPhases Phases(JsonFields fields) => new(fields.Text("trace"), new(fields.Text("axis"), fields.Text("monitor"), fields.OptionalSeconds("earliest"),
        fields.OptionalSeconds("earliestPhase"), fields.OptionalSeconds("latest"), fields.OptionalSeconds("latestPhase"), fields.OptionalSeconds("quietPhase"))
    {
        Limits = fields.List("limits", limit => new PhaseLimit(limit.Text("side"), limit.OptionalCount("level"), limit.OptionalNumber("worst"), limit.Seconds("worstPhase"),
            limit.OptionalNumber("best"), limit.Seconds("bestPhase"))),
    });

    private static Reaction Reaction(JsonFields fields)
    {
        var text = fields.Text("reaction");
        foreach (var reaction in Enum.GetValues<Reaction>())
            if (ResultJson.Spelling(reaction) == text) return reaction;
        fields.Report("reaction", $"'{text}' is no reaction", "write stop 0, stop 1, stop 2 or none");
        return default;
    }

    private static bool IsStaircase(TunedLimit limit)
    {
        var sign = limit.IsLower ? -1 : 1;
        return limit.Frontier.Zip(limit.Frontier.Skip(1)).All(pair => pair.First.Filter < pair.Second.Filter && sign * pair.First.Limit > sign * pair.Second.Limit);
    }
}
