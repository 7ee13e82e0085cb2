using System.Reflection;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace MonitorSim.Plans;

/// <summary>The summaries of the library's own documentation file, which is delivered beside it.</summary>
internal static partial class DocComments
{
    private static readonly Lazy<Dictionary<string, string>> Summaries = new(Read);

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();

    /// <summary>The summary of a record, property or enumeration member as plain text; null without one.</summary>
    public static string? Of(MemberInfo member)
    {
        var id = member switch
        {
            Type type => $"T:{type.FullName}",
            PropertyInfo property => $"P:{property.DeclaringType!.FullName}.{property.Name}",
            _ => $"F:{member.DeclaringType!.FullName}.{member.Name}",
        };
        return Summaries.Value.GetValueOrDefault(id.Replace('+', '.'));
    }

    private static Dictionary<string, string> Read()
    {
        var assembly = typeof(DocComments).Assembly;
        var file = Path.Combine(AppContext.BaseDirectory, assembly.GetName().Name + ".xml");
        if (!File.Exists(file)) return [];
        return XDocument.Load(file).Descendants("member").Where(member => member.Element("summary") is not null)
            .ToDictionary(member => member.Attribute("name")!.Value, member => Plain(member.Element("summary")!), StringComparer.Ordinal);
    }

    private static string Plain(XElement summary)
    {
        var text = string.Concat(summary.Nodes().Select(node => node switch
        {
            XElement { Name.LocalName: "see" } see => Member(see.Attribute("cref")?.Value ?? ""),
            XElement element => element.Value,
            XText words => words.Value,
            _ => "",
        }));
        return Space().Replace(text, " ").Trim();
    }

    /// <summary>JSON calls members by another spelling than C#.</summary>
    private static string Member(string cref) => JsonNamingPolicy.CamelCase.ConvertName(cref[(cref.LastIndexOf('.') + 1)..]);
}
