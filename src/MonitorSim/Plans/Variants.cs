using MonitorSim.Monitors;
using MonitorSim.Motion.Faults;
using MonitorSim.Synthesis.Steps;

namespace MonitorSim.Plans;

/// <summary>A family of records that JSON tells apart by the word of one key, such as <c>"function": "SLS"</c>.</summary>
internal sealed class Variants
{
    private static readonly Lazy<Dictionary<Type, Variants>> Known = new(() => new Variants[]
    {
        new(typeof(MonitorPlan), "monitor", "function", MonitorTypes.All, typeof(UnknownMonitor)),
        new(typeof(ScenarioStep), "step", "step", StepTypes.All, typeof(UnknownStep)),
        new(typeof(ChannelFault), "fault", "fault", ChannelFaultTypes.All, typeof(UnknownChannelFault)),
    }.ToDictionary(family => family._family));

    private readonly Type _family;
    private readonly Dictionary<string, Type> _byWord;

    private Variants(Type family, string noun, string key, IReadOnlyList<Type> types, Type unknown)
    {
        (_family, Noun, Key, Unknown) = (family, noun, key, unknown);
        _byWord = types.ToDictionary(type => Word(Activator.CreateInstance(type)!), StringComparer.Ordinal);
    }

    /// <summary>What one of them is called, such as <c>monitor</c>.</summary>
    public string Noun { get; }

    /// <summary>The key that tells them apart; the records have a property of that name in C#.</summary>
    public string Key { get; }

    /// <summary>Stands for one whose word could not be read, so that references to it do not count as errors too.</summary>
    public Type Unknown { get; }

    /// <summary>All words, in the order of the list.</summary>
    public IReadOnlyCollection<string> Words => _byWord.Keys;

    /// <summary>The family of that base record, or null.</summary>
    public static Variants? Of(Type family) => Known.Value.GetValueOrDefault(family);

    /// <summary>The family that a record belongs to, or null.</summary>
    public static Variants? OfMember(object record) => record.GetType().BaseType is { } family ? Of(family) : null;

    /// <summary>The record of a word, or null.</summary>
    public Type? Find(string word) => _byWord.GetValueOrDefault(word);

    /// <summary>The word of a record.</summary>
    public string Word(object record)
    {
        var property = _family.GetProperties().Single(property => string.Equals(property.Name, Key, StringComparison.OrdinalIgnoreCase));
        return (string)property.GetValue(record)!;
    }
}
