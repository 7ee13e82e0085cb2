using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace MonitorSim.Plans;

/// <summary>The words of enumerations in JSON: camelCase unless the member says otherwise.</summary>
internal static class Choice
{
    /// <summary>The word for a value, such as <c>stop 1</c>.</summary>
    public static string Name(Enum value)
    {
        var field = value.GetType().GetField(value.ToString())!;
        return field.GetCustomAttribute<JsonStringEnumMemberNameAttribute>()?.Name ?? JsonNamingPolicy.CamelCase.ConvertName(field.Name);
    }

    /// <summary>All words of an enumeration, in its order.</summary>
    public static IReadOnlyList<string> Names(Type type) => [.. Enum.GetValues(type).Cast<Enum>().Select(Name)];

    /// <summary>The value of a word; spelling and case count.</summary>
    public static object? Value(Type type, string name) => Enum.GetValues(type).Cast<Enum>().FirstOrDefault(value => Name(value) == name);
}
