using System.Runtime.CompilerServices;
using System.Text;
using MonitorSim.Plans;
using MonitorSim.Quantities;
using MonitorSim.Synthesis;
using MonitorSim.Traces;
using MonitorSim.Tuning;

namespace MonitorSim.Tests.Fuzz;

/// <summary>Whatever a file holds, a reader reads it or says what is wrong and where: no crash, no hang, no other exception. The corpus is what the repository
/// holds of each kind: the demo's plans and recordings, the scenarios of the docs.</summary>
public class ReaderFuzzTests
{
    private const int Injured = 1_500;

    [Fact]
    public void Plans() => EachInjured(Corpus("traces", "plan.json"), (text, seed) =>
    {
        try
        {
            // What was read can be written, and reads the same again.
            var plan = PlanReader.Parse(text, "plan.json");
            var written = PlanWriter.Write(plan);
            Assert.Equal(written, PlanWriter.Write(PlanReader.Parse(written)));
        }
        catch (InputException told)
        {
            Says(told, seed);
        }
    });

    [Fact]
    public void Recordings() => EachInjured([.. Corpus("traces", "trace.csv").Select(text => text[..Math.Min(text.Length, 3_000)])], (text, seed) =>
    {
        try
        {
            // A number that was read is what stands there: written and read again, it is the same trace.
            var trace = TraceReader.Read(new MemoryStream(text), "trace.csv");
            var written = new MemoryStream();
            TraceWriter.Write(trace, written);
            written.Position = 0;
            var again = TraceReader.Read(written, "again.csv", new() { TimeColumn = "time", TimeUnit = "s" });
            Assert.Equal(trace.Times, again.Times);
            Assert.Equal(trace.Columns.Select(column => column.Name), again.Columns.Select(column => column.Name));
            foreach (var (one, other) in trace.Columns.Zip(again.Columns))
                if (one is NumberColumn numbers && other is NumberColumn read) Assert.Equal(numbers.Values, read.Values);
        }
        catch (InputException told)
        {
            Says(told, seed);
        }
    });

    [Fact]
    public void Scenarios() => EachInjured(Corpus("docs/scenarios", "*.json"), (text, seed) =>
    {
        try
        {
            _ = ScenarioReader.Parse(text, "scenario.json");
        }
        catch (InputException told)
        {
            Says(told, seed);
        }
    });

    [Fact]
    public void Parts() => EachInjured([Encoding.UTF8.GetBytes(Tuning.TuneBench.Json(Tune.Run(Tuning.TuneBench.Plan, [Tuning.TuneBench.Trace("one", [65, 70, 81, 67, 3])])))], (text, seed) =>
    {
        try
        {
            _ = TuneReader.Parse(Encoding.UTF8.GetString(text), "part.json");
        }
        catch (InputException told)
        {
            Says(told, seed);
        }
    });

    [Fact]
    public void Conditions() => EachInjured([.. new[] { "not (a and b) or c", "bridge.state == Running and lift.slack", "always" }.Select(Encoding.UTF8.GetBytes)], (text, seed) =>
    {
        try
        {
            _ = Condition.Parse(Encoding.UTF8.GetString(text));
        }
        catch (FormatException told)
        {
            Assert.False(string.IsNullOrWhiteSpace(told.Message), $"seed {seed}");
        }
    });

    [Fact]
    public void Quantities() => EachInjured([.. new[] { "12.5 mm/s", "-3 N·m", "1.5e3 1/min", "0.5 m/s²", "250 kg·m²" }.Select(Encoding.UTF8.GetBytes)], (text, seed) =>
    {
        try
        {
            _ = Quantity.Parse(Encoding.UTF8.GetString(text));
        }
        catch (FormatException told)
        {
            Assert.False(string.IsNullOrWhiteSpace(told.Message), $"seed {seed}");
        }
    });

    [Theory]
    [InlineData("(")]
    [InlineData("not ")]
    [InlineData("a and ")]
    public void A_condition_may_be_long_but_not_endless(string piece) =>
        Assert.Throws<FormatException>(() => Condition.Parse(string.Concat(Enumerable.Repeat(piece, 200_000)) + "a"));

    [Theory]
    [InlineData("[")]
    [InlineData("{\"a\":")]
    public void Json_may_be_deep_but_not_endless(string piece) =>
        Assert.Throws<InputException>(() => PlanReader.Parse(string.Concat(Enumerable.Repeat(piece, 200_000))));

    private static void EachInjured(IReadOnlyList<byte[]> corpus, Action<byte[], int> read)
    {
        Assert.NotEmpty(corpus);
        for (var seed = 0; seed < Injured; seed++)
        {
            var text = new Mutator(seed).Of(corpus[seed % corpus.Count]);
            var failure = Record.Exception(() => read(text, seed));
            Assert.True(failure is null, $"seed {seed}: {failure}\n{Encoding.UTF8.GetString(text)}");
        }
    }

    private static void Says(InputException told, int seed)
    {
        Assert.NotEmpty(told.Problems);
        Assert.All(told.Problems, problem => Assert.False(string.IsNullOrWhiteSpace(problem.Place) || string.IsNullOrWhiteSpace(problem.What), $"seed {seed}: {told.Message}"));
    }

    private static List<byte[]> Corpus(string folder, string pattern, [CallerFilePath] string here = "") =>
        [.. Directory.EnumerateFiles(Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../..", folder)), pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(File.ReadAllBytes)];
}
