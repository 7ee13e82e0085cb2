using System.Reflection;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using MonitorSim.Monitors;
using MonitorSim.Plans;

namespace MonitorSim.Tests.Plans;

/// <summary>Every function, stop and estimator says the same things in the same order: one sentence; equation, initial condition, start-up, pitfall; parameters with
/// unit and legal range, each on its own property; the standard. What the docs say of units and ranges is what the checks of a plan go by.</summary>
public partial class FunctionDocsTests
{
    private static readonly string[] Sections = ["Equation", "Initial condition", "Start-up", "Pitfall", "Standard"];

    private static readonly Dictionary<string, XElement> Docs = XDocument.Load(Path.Combine(AppContext.BaseDirectory, "MonitorSim.xml"))
        .Descendants("member").ToDictionary(member => member.Attribute("name")!.Value);

    private static readonly Type[] Stops = [.. typeof(StopsPlan).GetProperties().Select(property => property.PropertyType).Distinct()];

    /// <summary>Documentation ids of all that has to have every section.</summary>
    public static TheoryData<string> Recorded() =>
    [
        $"T:{typeof(MonitorPlan).FullName}", .. MonitorTypes.All.Select(type => $"T:{type.FullName}"), .. Stops.Select(type => $"T:{type.FullName}"), $"T:{typeof(SecondChannelPlan).FullName}",
        .. Enum.GetNames<EstimatorName>().Select(name => $"F:{typeof(EstimatorName).FullName}.{name}"),
    ];

    /// <summary>Every parameter: its record and name.</summary>
    public static TheoryData<string, string> Parameters()
    {
        var parameters = new TheoryData<string, string>();
        foreach (var type in MonitorTypes.All.Concat(Stops).Append(typeof(MonitorPlan)).Append(typeof(SpeedLevel)).Append(typeof(Approach)).Append(typeof(EstimatorPlan)))
            foreach (var property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.DeclaredOnly).Where(property => property.CanWrite && property.SetMethod!.IsPublic))
                parameters.Add(type.FullName!, property.Name);
        foreach (var name in new[] { nameof(SecondChannelPlan.Tolerance), nameof(SecondChannelPlan.Time) }) parameters.Add(typeof(SecondChannelPlan).FullName!, name);
        return parameters;
    }

    [Theory]
    [MemberData(nameof(Recorded))]
    public void A_record_has_every_section_in_order(string id)
    {
        Assert.True(Docs.TryGetValue(id, out var doc), $"{id} has no documentation");
        Assert.EndsWith(".", Text(doc!.Element("summary")));
        var paragraphs = (doc.Element("remarks")?.Elements("para") ?? []).Select(Text).ToArray();
        var titles = paragraphs.Select(text => text.Split(':')[0]).Where(Sections.Contains);
        Assert.True(Sections.SequenceEqual(titles), $"{id}: its remarks need the paragraphs {string.Join(", ", Sections)}, in this order, each once; there are: {string.Join(", ", titles)}");
        Assert.All(paragraphs, text => Assert.True(text.Length > text.IndexOf(':', StringComparison.Ordinal) + 5, $"{id}: '{text}' says nothing"));
    }

    [Theory]
    [MemberData(nameof(Parameters))]
    public void A_parameter_says_its_unit_its_range_and_what_it_is_without(string type, string name)
    {
        var property = typeof(MonitorPlan).Assembly.GetType(type)!.GetProperty(name)!;
        Assert.True(Docs.TryGetValue($"P:{type}.{name}", out var doc), $"{type}.{name} has no documentation");
        var text = Text(doc!.Element("summary"));
        if (property.GetCustomAttribute<KindAttribute>() is { } kind)
        {
            var wanted = $", {Units(kind.Kind)}, {Range(kind.Allowed)}";
            Assert.True(text.Contains(wanted, StringComparison.Ordinal), $"{type}.{name}: '{text}' should say '{wanted}', as its [Kind] does");
        }
        else if (property.PropertyType == typeof(int?)) Assert.Contains(", 1 or more", text, StringComparison.Ordinal);
        else if (property.PropertyType == typeof(double?)) Assert.Matches("0 < (alpha|beta) <", text);

        // Where a plan may leave it out, it says what then holds; a stop's needs are said by its variant, an estimator's by its name.
        var isOptional = property.CustomAttributes.All(attribute => attribute.AttributeType.Name != "RequiredMemberAttribute");
        Assert.True(!isOptional || Optional().IsMatch(text), $"{type}.{name}: '{text}' should say its default");
    }

    [GeneratedRegex(@"; default |either this or|\((t|r|d|r, d|variant t|r\) or .*|savitzkyGolay|lowPass|alphaBeta)\),|must be given")]
    private static partial Regex Optional();

    private static string Range(Allowed allowed) => allowed switch
    {
        Allowed.NonNegative => "0 or more",
        Allowed.Positive => "more than 0",
        Allowed.Any => "of any sign",
        _ => "0 or more unless signed",
    };

    private static string Units(Kind kind) => kind switch
    {
        Kind.Time => "s",
        Kind.Position => "m or rad",
        Kind.Velocity => "m/s or rad/s",
        Kind.Acceleration => "m/s² or rad/s²",
        Kind.Torque => "N or N·m",
        Kind.Temperature => "°C",
        Kind.TemperatureDifference => "K",
        Kind.ChannelDifference => "the channel's unit",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "say its units here"),
    };

    private static string Text(XElement? element) => Space().Replace(element?.Value ?? "", " ").Trim();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
