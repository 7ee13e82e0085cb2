using System.Text.Json;
using Json.Schema;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Plans;

public class PlanSchemaTests
{
    private static readonly JsonDocumentOptions AsPlans = new() { AllowTrailingCommas = true, CommentHandling = JsonCommentHandling.Skip };
    private static readonly JsonSchema Schema = JsonSchema.FromText(PlanSchema.Json());

    private static bool Accepts(string text)
    {
        using var document = JsonDocument.Parse(text, AsPlans);
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    [SkippableFact]
    public void It_accepts_the_plans_of_all_cases()
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository");
        Assert.All(Directory.EnumerateFiles(SharedFolder.Cases!, "plan.json", SearchOption.AllDirectories), plan => Assert.True(Accepts(File.ReadAllText(plan)), plan));
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("""{ "$schema": "./monitorsim-plan.schema.json", "plan": 1, "cycle": "trace" }""")]
    [InlineData("""{ "cycle": "4 ms", "expect": [ { "axis": "a", "monitor": "*", "trips": false, "between": ["0 s", "1 s"] }, ], }""")]
    [InlineData("""{ "signals": { "a": { "column": "Mode", "equals": 2 }, "b": { "column": "Mode", "equals": "Auto" }, "c": { "column": "x", "equals": true } } }""")]
    [InlineData("""{ "axes": { "a": { "gear": "5:1", "channels": { "torque": { "column": "q", "scale": -0.82, "offset": "-1 N" } } } } }""")]
    [InlineData("""{ "axes": { "a": { "monitors": [ { "name": "n", "function": "SLS", "limit": "1500 1/min", "reaction": "stop 2", "signed": true } ] } } }""")]
    [InlineData("""{ "axes": { "a": { "stops": { "STO": {}, "SS1": { "variant": "d", "deceleration": "1,5 m/s²" } } } } }""")]
    public void It_accepts(string plan) => Assert.True(Accepts(plan));

    [Theory]
    [InlineData("""{ "plan": 2 }""")]
    [InlineData("""{ "cycel": "4 ms" }""")]
    [InlineData("""{ "cycle": 4 }""")]
    [InlineData("""{ "cycle": "4" }""")]
    [InlineData("""{ "cycle": "-4 ms" }""")]
    [InlineData("""{ "missing": "Reject" }""")]
    [InlineData("""{ "signals": { "a": {} } }""")]
    [InlineData("""{ "signals": { "a": { "column": "x", "windows": [["0 s", "1 s"]] } } }""")]
    [InlineData("""{ "signals": { "a": { "windows": [["0 s"]] } } }""")]
    [InlineData("""{ "axes": { "a": { "gear": "5" } } }""")]
    [InlineData("""{ "axes": { "a": { "monitors": [ { "function": "SLS", "limit": "1 rpm" } ] } } }""")]
    [InlineData("""{ "axes": { "a": { "monitors": [ { "name": "n", "limit": "1 rpm" } ] } } }""")]
    [InlineData("""{ "axes": { "a": { "monitors": [ { "name": "n", "function": "SLX" } ] } } }""")]
    [InlineData("""{ "axes": { "a": { "monitors": [ { "name": "n", "function": "SLS" } ] } } }""")]
    [InlineData("""{ "axes": { "a": { "monitors": [ { "name": "n", "function": "SLP" } ] } } }""")]
    [InlineData("""{ "axes": { "a": { "monitors": [ { "name": "n", "function": "SLS", "limit": "1 rpm", "window": "1 mm" } ] } } }""")]
    [InlineData("""{ "axes": { "a": { "monitors": [ { "name": "n", "function": "SLS", "limit": "1 rpm", "reaction": "stop1" } ] } } }""")]
    [InlineData("""{ "axes": { "a": { "stops": { "STOP": {} } } } }""")]
    public void It_refuses(string plan) => Assert.False(Accepts(plan));

    [Fact]
    public void Every_member_is_described()
    {
        using var document = JsonDocument.Parse(PlanSchema.Json());
        var missing = new List<string>();
        foreach (var definition in document.RootElement.GetProperty("$defs").EnumerateObject().Append(default))
        {
            var schema = definition.Value.ValueKind == JsonValueKind.Undefined ? document.RootElement : definition.Value;
            missing.AddRange(schema.GetProperty("properties").EnumerateObject().Where(property => property.Name != "function" && !property.Value.TryGetProperty("description", out _))
                .Select(property => property.Name));
        }

        Assert.Empty(missing);
    }

    [Fact]
    public void It_does_not_depend_on_culture()
    {
        var invariant = PlanSchema.Json();
        InCulture.Each(() => Assert.Equal(invariant, PlanSchema.Json()));
    }
}
