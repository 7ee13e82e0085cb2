using System.Text.Json;
using System.Text.Json.Nodes;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces.Formats;

/// <summary>The demo's recordings give the same results to the bit as CSV, as Parquet and as HDF5.</summary>
public class SameReplayTests
{
    [Theory]
    [InlineData("bridge-gate-speed")]
    [InlineData("turntable-cam")]
    [InlineData("lift-slack")]
    [InlineData("bridge-two-encoders")]
    public void The_result_does_not_depend_on_the_format(string name)
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "traces", name);
        var planText = File.ReadAllText(Path.Combine(folder, "plan.json"));
        var trace = TraceReader.Read(Path.Combine(folder, "trace.csv"), PlannedTrace.DialectOf(PlanReader.Parse(planText).Trace), null, out var found);
        var plan = PlanReader.Parse(WithUnits(planText, trace, found.Dialect));
        var scale = found.Dialect.TimeUnit switch { "s" => 1e9, "ms" => 1e6, var unit => throw new InvalidOperationException(unit) };
        (string, Array)[] columns = [(found.Dialect.TimeColumn!, trace.Times.ToArray().Select(time => time / scale).ToArray()), .. trace.Columns.Select(column => (column.Name, Values(column)))];

        var expected = Result(plan, TraceReader.Read(Path.Combine(folder, "trace.csv"), PlannedTrace.DialectOf(plan.Trace), PlannedTrace.Columns(plan)));

        foreach (var bytes in new[] { BinaryFile.Parquet(1_000_000, columns), BinaryFile.Parquet(777, columns), BinaryFile.Hdf5("", columns), BinaryFile.Hdf5("recording", columns) })
            Assert.Equal(expected, Result(plan, TraceReader.Read(new MemoryStream(bytes), "trace", PlannedTrace.DialectOf(plan.Trace), PlannedTrace.Columns(plan))));
    }

    // A plan that says what the row of units said.
    private static string WithUnits(string text, Trace trace, Dialect dialect)
    {
        var plan = JsonNode.Parse(text, null, new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true })!;
        plan["trace"] = new JsonObject { ["time"] = new JsonObject { ["column"] = dialect.TimeColumn, ["unit"] = dialect.TimeUnit } };
        foreach (var (_, axis) in plan["axes"]!.AsObject())
        {
            foreach (var (_, channel) in axis!["channels"]!.AsObject())
                if (channel!["column"] is { } column && channel["unit"] is null) channel["unit"] = trace.Find(column.GetValue<string>())!.Unit;
        }

        return plan.ToJsonString();
    }

    private static Array Values(Column column) => column is NumberColumn numbers
        ? numbers.Values.ToArray()
        : ((WordColumn)column).Codes.ToArray().Select(code => code < 0 ? "" : ((WordColumn)column).Words[code]).ToArray();

    private static string Result(Plan plan, Trace trace)
    {
        var bytes = new MemoryStream();
        ResultJson.Write(Replay.Run(plan, trace), bytes);
        var json = JsonNode.Parse(bytes.ToArray())!;
        var file = json["trace"]!.AsObject();
        Assert.Equal(64, file["sha256"]!.GetValue<string>().Length);
        file.Remove("sha256");
        file.Remove("file");
        return json.ToJsonString();
    }
}
