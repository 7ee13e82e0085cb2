using System.Text.Json.Nodes;

namespace MonitorSim.Tests.Model;

/// <summary>Makes a plan and its recording smaller as long as both answers differ, so that a difference can be read.</summary>
internal static class ModelShrinker
{
    /// <summary>What differs for a plan; null where the plan is not legal (any more).</summary>
    public static List<string>? Differences(RandomPlan plan)
    {
        try
        {
            return ModelComparison.Differences(ModelComparison.Model(new(plan.Json, plan.Csv)), ModelComparison.Product(plan.Json, plan.Csv));
        }
        catch (Exception) // a plan with a piece cut out may be refused by the product and break the model
        {
            return null;
        }
    }

    public static RandomPlan Shrink(RandomPlan plan)
    {
        for (var isSmaller = true; isSmaller;)
        {
            var before = plan;
            plan = Rows(plan);
            foreach (var path in Paths(JsonNode.Parse(plan.Json)!).OrderBy(path => path.Length).ToList())
                if (Without(plan, path) is { } smaller && Differs(smaller)) plan = smaller;
            isSmaller = plan != before;
        }

        return plan;
    }

    private static bool Differs(RandomPlan plan) => Differences(plan) is { Count: > 0 };

    // Fewer samples at the end.
    private static RandomPlan Rows(RandomPlan plan)
    {
        var lines = plan.Csv.TrimEnd('\n').Split('\n');
        for (var drop = lines.Length / 2; drop > 0; drop /= 2)
        {
            while (lines.Length > drop + 3)
            {
                var shorter = plan with { Csv = string.Join('\n', lines[..^drop]) + "\n" };
                if (!Differs(shorter)) break;
                (plan, lines) = (shorter, lines[..^drop]);
            }
        }

        return plan;
    }

    private static RandomPlan? Without(RandomPlan plan, string path)
    {
        var root = JsonNode.Parse(plan.Json)!;
        var node = Paths(root, "").FirstOrDefault(pair => pair.Path == path).Node;
        if (node?.Parent is JsonObject parent) parent.Remove(node.GetPropertyName());
        else if (node?.Parent is JsonArray list) list.Remove(node);
        else return null;
        return plan with { Json = root.ToJsonString(RandomPlan.Readable) };
    }

    private static IEnumerable<string> Paths(JsonNode root) => Paths(root, "").Select(pair => pair.Path);

    private static IEnumerable<(string Path, JsonNode Node)> Paths(JsonNode node, string path)
    {
        var children = node switch
        {
            JsonObject members => members.Select(pair => ($"{path}/{pair.Key}", pair.Value!)),
            JsonArray items => items.Select((item, i) => ($"{path}/{i}", item!)),
            _ => [],
        };
        foreach (var (name, child) in children)
        {
            yield return (name, child);
            foreach (var below in Paths(child, name)) yield return below;
        }
    }
}
