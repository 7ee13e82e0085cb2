using System.Collections;
using System.Text.Json;
using FsCheck.Xunit;
using Json.Schema;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Plans;

public class PlanWriterTests
{
    private static readonly Lazy<JsonSchema> Schema = new(() => JsonSchema.FromText(PlanSchema.Json()));

    [Property(MaxTest = 60)]
    public void A_plan_survives_its_JSON(int seed) => InCulture.Each(() =>
    {
        var plan = new RandomPlan(seed).Draw();
        Assert.Empty(PlanChecks.Check(plan));
        var text = PlanWriter.Write(plan);
        var back = PlanReader.Parse(text);
        Assert.Null(Difference(plan, back, "plan"));
        Assert.Equal(text, PlanWriter.Write(back));
        using var document = JsonDocument.Parse(text);
        Assert.True(Schema.Value.Evaluate(document.RootElement).IsValid, text);
    });

    [SkippableFact]
    public void Plans_of_all_cases_survive()
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository");
        foreach (var file in Directory.EnumerateFiles(SharedFolder.Cases!, "plan.json", SearchOption.AllDirectories))
        {
            if (File.Exists(Path.Combine(Path.GetDirectoryName(file)!, "refused.txt"))) continue;
            var plan = PlanReader.Parse(File.ReadAllText(file));
            Assert.Null(Difference(plan, PlanReader.Parse(PlanWriter.Write(plan)), file));
        }
    }

    [Fact]
    public void What_says_nothing_new_is_left_out() => Assert.Equal(
        """
        {
          "plan": 1,
          "title": "m/s²",
          "axes": {
            "a": {
              "motion": "linear",
              "channels": {
                "velocity": {
                  "column": "v",
                  "unit": "mm/s",
                  "scale": 0.1
                }
              },
              "stops": {
                "STO": {}
              },
              "monitors": [
                {
                  "name": "slow",
                  "function": "SLS",
                  "reaction": "stop 0",
                  "limit": "33,0 mm/s"
                }
              ]
            }
          }
        }

        """,
        PlanWriter.Write(new()
        {
            Title = "m/s²",
            Axes = new Dictionary<string, AxisPlan>
            {
                ["a"] = new()
                {
                    Channels = new() { Velocity = new() { Column = "v", Unit = "mm/s", Scale = new(1, 10) } },
                    Stops = new() { Sto = new() },
                    Monitors = [new MonitorSim.Monitors.Sls { Name = "slow", Limit = "33,0 mm/s", Reaction = Reaction.Stop0 }],
                },
            },
        }));

    /// <summary>Where two plans differ, member by member; null where they are the same. Lists and maps compare by what they hold.</summary>
    private static string? Difference(object? a, object? b, string path)
    {
        if (a is null || b is null) return a is null && b is null ? null : $"{path}: {a ?? "null"} | {b ?? "null"}";
        if (a.GetType().GetProperty("Keys") is not null)
        {
            var (left, right) = (PlanType.Entries(a).ToList(), PlanType.Entries(b).ToDictionary());
            if (left.Count != right.Count) return $"{path}: {left.Count} | {right.Count}";
            return left.Select(entry => Difference(entry.Value, right.GetValueOrDefault(entry.Name), $"{path}.{entry.Name}")).FirstOrDefault(found => found is not null);
        }

        if (a is IEnumerable list and not string)
        {
            var (left, right) = (list.Cast<object?>().ToList(), ((IEnumerable)b).Cast<object?>().ToList());
            if (left.Count != right.Count) return $"{path}: {left.Count} | {right.Count}";
            return left.Select((item, i) => Difference(item, right[i], $"{path}[{i}]")).FirstOrDefault(found => found is not null);
        }

        if (Shape.Of(a.GetType()).Kind != ShapeKind.Record && a is not MonitorSim.Monitors.MonitorPlan) return Equals(a, b) && a.ToString() == b.ToString() ? null : $"{path}: {a} | {b}";
        if (a.GetType() != b.GetType()) return $"{path}: {a.GetType()} | {b.GetType()}";
        return PlanType.Of(a.GetType()).Members.Select(member => Difference(member.Get(a), member.Get(b), $"{path}.{member.Name}")).FirstOrDefault(found => found is not null);
    }
}
