using System.Text.Json;
using Json.Schema;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Synthesis;
using MonitorSim.Synthesis.Steps;

namespace MonitorSim.Tests.Synthesis;

/// <summary>What a scenario file says wrongly, and what its schema accepts.</summary>
public class ScenarioErrorTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(ScenarioSchema.Json());

    private static IEnumerable<string> Errors(string text) => Assert.Throws<InputException>(() => ScenarioReader.Parse(text, "s")).Problems.Select(problem => problem.ToString());

    private static bool Accepts(string text)
    {
        using var document = JsonDocument.Parse(text, new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip });
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    private static string Steps(string steps, string motion = "linear") =>
        $$"""{ "scenario": 1, "rate": "1 kHz", "axes": { "a": { "motion": "{{motion}}", "steps": [{{steps}}] } } }""";

    private static string Column(string column) => $$"""{ "rate": "1 kHz", "axes": { "a": { "columns": { "c": {{column}} } } } }""";

    [Fact]
    public void All_errors_come_at_once_each_at_its_place() => Assert.Equal(
    [
        "s(1,15): scenario: version 2 is not known; write 1",
        "s(2,13): rate: '1000' has no unit; would do: \"1000 Hz\", \"1000 kHz\"",
        "s(3,5): unknown key 'sede'; did you mean 'seed'?",
        "s(5,17): step: unknown step 'hodl'; did you mean 'hold'?",
        "s(6,7): 'acceleration' is missing; add \"acceleration\": \"… deg/s²\"",
        "s(6,7): steps: neither by nor to is set; set by or to",
        "s(7,68): fault: unknown fault 'stuk'; did you mean 'stuck'?",
    ],
    Errors("{ \"scenario\": 2,\n    \"rate\": \"1000\",\n    \"sede\": 3,\n    \"axes\": { \"a\": { \"motion\": \"rotary\", \"steps\": [\n      { \"step\": \"hodl\", \"for\": \"1 s\" },\n      { \"step\": \"move\", \"speed\": \"1 rpm\" } ],\n      \"columns\": { \"p\": { \"of\": \"position\", \"faults\": [ { \"fault\": \"stuk\" } ] } } } } }"));

    public static TheoryData<string, string> Mistakes => new()
    {
        { "[]", "s(1,1): a scenario is an object, this is a list; write { \"scenario\": 1, … }" },
        { "{ \"rate\": \"1 kHz\", \"axes\": {} }", "axes: there is no axis; give at least one" },
        { "{ \"axes\": { \"a\": {} } }", "'rate' is missing; add \"rate\": \"… Hz\"" },
        { "{ \"rate\": \"2 GHz\", \"axes\": { \"a\": {} } }", "rate: '2 GHz' is more than 1 GHz; time has a resolution of 1 ns" },
        { "{ \"rate\": \"1 kHz\", \"jitter\": \"0.5 ms\", \"axes\": { \"a\": {} } }", "jitter: '0.5 ms' is not below half a sampling period at 1 kHz; samples keep their order with less" },
        { "{ \"rate\": \"1 kHz\", \"seed\": -1, \"axes\": { \"a\": {} } }", "seed: -1 is below 0; write 0 or more" },
        { "{ \"rate\": \"1 kHz\", \"missingRows\": [[\"0 s\", \"1 s\"]], \"axes\": { \"a\": {} } }", "missingRows: the first row cannot be missing, times count from it; begin later" },
        { "{ \"rate\": \"1 kHz\", \"trace\": { \"rate\": \"1 kHz\" }, \"axes\": { \"a\": {} } }", "rate: a synthetic recording has a time column; leave it out" },
        { "{ \"rate\": \"1 kHz\", \"axes\": { \"a\": {} }, \"signals\": { \"velocity\": { \"windows\": [] } } }", "velocity: there is a column 'velocity' already; name each column once" },
        { Steps("""{ "step": "ramp", "to": "1 m/s", "acceleration": "1 m/s²" }, { "step": "move", "by": "1 mm", "speed": "1 m/s", "acceleration": "1 m/s²" }"""), "steps[1]: the axis still moves when the move begins, at 1 s; RampTo a speed of 0 first" },
        { Steps("""{ "step": "move", "by": "1 mm", "to": "1 mm", "speed": "1 m/s", "acceleration": "1 m/s²" }"""), "steps: by and to exclude one another; keep by or to" },
        { Steps("""{ "step": "move", "by": "1 deg", "speed": "1 m/s", "acceleration": "1 m/s²" }"""), "by: unit 'deg' is no linear position; would do: mm, m, µm" },
        { Steps("""{ "step": "move", "by": "1 mm", "speed": "1 m/s", "acceleration": "1 m/s²", "jerk": "1 m/s²" }"""), "jerk: unit 'm/s²' is no linear jerk; would do: mm/s³, m/s³" },
        { Steps("""{ "step": "hold", "for": 3 }"""), "for: 3 has no unit; would do: \"3 ms\", \"3 s\", \"3 us\", \"3 min\"" },
        { Steps("""{ "step": "sine", "amplitude": "1 mm", "frequency": "2 Hz", "cycles": 0 }"""), "steps[0]: 0 cycles are none; give at least 1" },
        { Steps("""{ "step": "sine", "amplitude": "1 N", "frequency": "2 Hz" }"""), "steps[0]: '1 N' is no linear speed; would do: mm/s, m/s, m/min" },
        { Steps("""{ "step": "ramp", "to": "1 m/s", "acceleration": "1 m/s²" }, { "step": "coast", "deceleration": "1e-19 m/s²", "timeConstant": "1 s" }"""), "steps[1]: so little friction takes more than 40 time constants to stop the axis; give a larger deceleration" },
        { Steps("""{ "for": "1 s" }"""), "'step' is missing; write one of coast, dropOut, hold, move, noise, ramp, signal, sine" },
        { Steps("""{ "step": "signal", "name": "velocity" }"""), "name: there is a column 'velocity' already; name each column once" },
        { Column("""{ "of": "torqe" }"""), "of: unknown word 'torqe'; did you mean 'torque'?" },
        { Column("""{ "of": "torque" }"""), "of: torque needs a plant; describe the axis's plant" },
        { Column("""{ "of": "velocity", "unit": "mm" }"""), "unit: unit 'mm' is no linear speed; would do: mm/s, m/s, m/min" },
        { Column("""{ "of": "velocity", "noise": "1" }"""), "noise: '1' has no unit; would do: \"1 mm/s\", \"1 m/s\", \"1 m/min\"" },
        { Column("""{ "of": "velocity", "faults": [ { "fault": "drift", "by": "1 mm", "over": "1 s" } ] }"""), "by: unit 'mm' is no linear speed; would do: mm/s, m/s, m/min" },
        { Column("""{ "of": "velocity", "faults": [ { "fault": "stuck", "from": "2 s", "until": "2 s" } ] }"""), "until: '2 s' is not after its beginning; write a later time" },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void Mistakes_are_explained(string text, string message) => Assert.Contains(Errors(text), error => error.EndsWith(message, StringComparison.Ordinal));

    [Fact]
    public void The_schema_accepts_the_examples_and_says_what_every_member_means()
    {
        foreach (var example in Directory.GetFiles(Examples(), "*.json")) Assert.True(Accepts(File.ReadAllText(example)), example);
        Assert.True(Accepts(ScenarioWriter.Write(ScenarioReader.Read(Path.Combine(Examples(), "gate.json")))));
        using var document = JsonDocument.Parse(ScenarioSchema.Json());
        var schemas = document.RootElement.GetProperty("$defs").EnumerateObject().Select(definition => (definition.Name, definition.Value)).Append(("scenario", document.RootElement));
        var missing = schemas.SelectMany(schema => schema.Item2.GetProperty("properties").EnumerateObject().Where(property => property.Name is not ("step" or "fault") && !property.Value.TryGetProperty("description", out _))
            .Select(property => $"{schema.Item1}.{property.Name}"));
        Assert.Empty(missing);
    }

    [Theory]
    [InlineData("""{ "scenario": 1, "axes": { "a": {} } }""")]
    [InlineData("""{ "scenario": 2, "rate": "1 kHz", "axes": { "a": {} } }""")]
    [InlineData("""{ "rate": "1 kHz", "axes": { "a": { "steps": [ { "step": "hold" } ] } } }""")]
    [InlineData("""{ "rate": "1 kHz", "axes": { "a": { "steps": [ { "step": "hodl", "for": "1 s" } ] } } }""")]
    [InlineData("""{ "rate": "1 kHz", "axes": { "a": { "steps": [ { "step": "hold", "for": "1 s", "by": "1 mm" } ] } } }""")]
    [InlineData("""{ "rate": "1 kHz", "axes": { "a": { "columns": { "c": { "of": "speed" } } } } }""")]
    [InlineData("""{ "rate": "1 kHz", "axes": { "a": { "columns": { "c": { "of": "velocity", "faults": [ { "fault": "scaled" } ] } } } } }""")]
    public void The_schema_refuses(string text) => Assert.False(Accepts(text));

    [Fact]
    public void Every_step_and_fault_is_in_its_list()
    {
        Type[] Of<T>() => [.. typeof(Scenario).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(T)) && type.IsPublic).OrderBy(type => type.Name, StringComparer.Ordinal)];
        Assert.Equal(Of<ScenarioStep>(), StepTypes.All);
        Assert.Equal(Of<ChannelFault>(), ChannelFaultTypes.All);
        Assert.Equal(Variants.Of(typeof(ScenarioStep))!.Words.Order(StringComparer.OrdinalIgnoreCase), Variants.Of(typeof(ScenarioStep))!.Words);
    }

    internal static string Examples()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder!.FullName, "MonitorSim.sln"))) folder = folder.Parent;
        return Path.Combine(folder.FullName, "docs", "scenarios");
    }
}
