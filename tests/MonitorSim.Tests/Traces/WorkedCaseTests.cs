using System.Text.Json;
using Fractions;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

/// <summary>The recordings of the worked cases, read as their plans say and read without being told.</summary>
public class WorkedCaseTests
{
    [SkippableTheory]
    [InlineData("basic")]
    [InlineData("full")]
    public void Every_recording_is_read_as_its_plan_says(string set)
    {
        var folder = Folder(set);
        var read = 0;
        foreach (var plan in Directory.EnumerateFiles(folder, "plan.json", SearchOption.AllDirectories))
        {
            var expected = Path.Combine(Path.GetDirectoryName(plan)!, "expected.json");
            if (!File.Exists(expected)) continue;
            using var json = JsonDocument.Parse(File.ReadAllText(plan));
            using var result = JsonDocument.Parse(File.ReadAllText(expected));
            if (!json.RootElement.TryGetProperty("trace", out var block)) continue;
            var path = Path.Combine(Path.GetDirectoryName(plan)!, "trace.csv");
            var given = Given(block);
            var trace = TraceReader.Read(path, given, null, out var found);
            Assert.Equal(result.RootElement.GetProperty("trace").GetProperty("samples").GetInt32(), trace.Count);
            Assert.Equal(Math.Round(result.RootElement.GetProperty("trace").GetProperty("duration").GetDouble() * 1e9), trace.Times[^1]);

            // Without a word about separator, mark, preamble and units the same is found.
            var alone = TraceReader.Read(path, new Dialect { Rate = given.Rate, TimeUnit = given.TimeUnit }, null, out var worked);
            Assert.Equal((found.Dialect.Delimiter, found.FirstSampleLine), (worked.Dialect.Delimiter, worked.FirstSampleLine));
            Assert.Equal(trace.Times.ToArray(), alone.Times.ToArray());
            foreach (var column in trace.Columns.OfType<NumberColumn>()) Assert.Equal(column.Values.ToArray(), alone.Numbers(column.Name));
            read++;
        }

        Assert.True(read > 50, $"only {read} cases");
    }

    private static Dialect Given(JsonElement block)
    {
        string? Text(string name) => block.TryGetProperty(name, out var value) ? value.GetString() : null;
        var time = block.TryGetProperty("time", out var t) ? t : default;
        return new Dialect
        {
            Delimiter = Text("delimiter")?[0],
            Decimal = Text("decimal")?[0],
            SkipRows = block.TryGetProperty("skipRows", out var skip) ? skip.GetInt32() : null,
            UnitsRow = block.TryGetProperty("unitsRow", out var units) ? units.GetBoolean() : null,
            TimeColumn = time.ValueKind == JsonValueKind.Object ? time.GetProperty("column").GetString() : null,
            TimeUnit = time.ValueKind == JsonValueKind.Object ? time.GetProperty("unit").GetString() : null,
            Rate = Text("rate") is { } rate ? Hertz(rate) : null,
        };
    }

    private static Fraction Hertz(string text)
    {
        var parts = text.Split(' ');
        var number = Fraction.FromString(parts[0], System.Globalization.CultureInfo.InvariantCulture);
        return parts[1] == "kHz" ? number * 1000 : number;
    }

    private static string Folder(string set)
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var cases = Path.Combine(folder.FullName, "..", "shared", "cases", set);
            if (File.Exists(Path.Combine(folder.FullName, "MonitorSim.sln")) && Directory.Exists(cases)) return cases;
        }

        throw new SkipException($"the worked cases '{set}' are not there (../shared/cases beside the repository)");
    }
}
