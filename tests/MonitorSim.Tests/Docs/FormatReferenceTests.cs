using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json.Nodes;
using MonitorSim.Plans;
using MonitorSim.Replays;
using MonitorSim.Synthesis;

namespace MonitorSim.Tests.Docs;

/// <summary>The reference pages of the file formats say what the schemas say. To accept a change, run the tests with MONITORSIM_APPROVE=1 and commit docs/formats.</summary>
public class FormatReferenceTests
{
    [Fact]
    public void The_plan() => InStep("plan.md", "The plan", PlanSchema.Json(), """
        A plan is one JSON file; comments and trailing commas are allowed. Quantities are strings with a unit, such as "33 mm/s" or "12.5 N·m". Members that are not in bold may be left out.
        `monitorsim schema plan` prints the schema that this page is made from; name it in `$schema` and an editor will complete and check what you write.
        """);

    [Fact]
    public void The_scenario() => InStep("scenario.md", "The scenario", ScenarioSchema.Json(), """
        A scenario is one JSON file, read by the rules of plans, from which `monitorsim synth` makes a recording: the same bytes on every machine. Members that are not in bold may be left out.
        `monitorsim schema scenario` prints the schema that this page is made from.
        """);

    [Fact]
    public void The_result() => InStep("result.md", "The result", ResultSchema.Json(), """
        What `monitorsim replay --json` writes. Every number is in SI unless its member says its unit; times are seconds, exact to the nanosecond.
        `monitorsim schema result` prints the schema that this page is made from.
        """);

    private static void InStep(string file, string title, string schema, string head)
    {
        var page = Page(title, JsonNode.Parse(schema)!.AsObject(), head);
        var path = Path.Combine(Folder(), file);
        if (Environment.GetEnvironmentVariable("MONITORSIM_APPROVE") == "1") File.WriteAllText(path, page);
        Assert.Equal(page, File.ReadAllText(path).ReplaceLineEndings("\n"));
    }

    private static string Page(string title, JsonObject schema, string head)
    {
        var page = new StringBuilder($"# {title}\n\n{head.ReplaceLineEndings("\n")}\n\n");
        Table(page, schema);
        foreach (var (name, part) in schema["$defs"]?.AsObject() ?? [])
        {
            page.Append($"## {name}\n\n");
            if (part!["description"] is { } description) page.Append($"{description}\n\n");
            if (part["allOf"] is JsonArray choices)
                page.Append($"One of {string.Join(", ", choices.Select(choice => Link(choice!["then"]!["$ref"]!.GetValue<string>())))}, after its `function`.\n\n");
            else Table(page, part.AsObject());
        }

        return page.ToString().TrimEnd() + "\n";
    }

    private static void Table(StringBuilder page, JsonObject part)
    {
        if (part["properties"] is not JsonObject members) return;
        var required = (part["required"] as JsonArray ?? []).Select(name => name!.GetValue<string>()).ToHashSet();
        page.Append("| member | is | form |\n|---|---|---|\n");
        foreach (var (name, member) in members)
        {
            var standing = member!["default"] is { } value ? $"; default `{value}`" : "";
            var text = member["description"]?.GetValue<string>() ?? "";
            page.Append($"| {(required.Contains(name) ? $"**{name}**" : name)} | {Cell(text)} | {Cell(Form(member) + standing)} |\n");
        }

        page.Append('\n');
        foreach (var (name, member) in members)
        {
            if (Inline(member!) is not { } inline) continue;
            page.Append($"## {name}\n\n{inline["description"]}\n\n");
            Table(page, inline);
        }
    }

    /// <summary>A record that the schema spells out where it is used, alone or in a list.</summary>
    private static JsonObject? Inline(JsonNode member) =>
        member["properties"] is not null ? member.AsObject() : member["items"] is { } item ? Inline(item) : null;

    private static string Form(JsonNode member)
    {
        if (member["$ref"] is { } reference) return Link(reference.GetValue<string>());
        if (member["properties"] is not null) return "as below";
        if (member["const"] is { } constant) return $"`{constant}`";
        if (member["enum"] is JsonArray values) return string.Join(", ", values.Select(value => $"`{value}`"));
        if ((member["oneOf"] ?? member["anyOf"]) is JsonArray choices)
            return string.Join("; ", choices.Select(choice => Form(choice!) + (choice!["description"] is { } what ? $": {what.GetValue<string>().TrimEnd('.')}" : "")));
        if (member["additionalProperties"] is JsonObject each) return $"by name: {Form(each)}";
        if (member["items"] is { } item) return Form(item) is "as below" ? "list, as below" : $"list of {Form(item)}";
        var type = member["type"] is JsonArray types ? string.Join(" or ", types.Select(one => one!.GetValue<string>())) : member["type"]?.GetValue<string>() ?? "";
        return member["examples"] is JsonArray examples ? string.Join(", ", examples.Select(example => $"`{example}`")) : type;
    }

    private static string Link(string reference)
    {
        var name = reference[(reference.LastIndexOf('/') + 1)..];
        return $"[{name}](#{name.ToLowerInvariant()})";
    }

    private static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).ReplaceLineEndings(" ");

    private static string Folder([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "../../../docs/formats"));
}
