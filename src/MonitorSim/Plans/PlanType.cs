using System.Collections;
using System.Collections.Concurrent;
using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Text.Json.Serialization;
using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>What a member of a plan's or scenario's record looks like in JSON.</summary>
internal enum ShapeKind
{
    Text, Flag, Whole, Real, Factor, Quantity, Unit, Condition, Gear, Choice, Variant, Record, List, Map,
}

/// <summary>The JSON shape of a type.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Type">The C# type, not nullable.</param>
/// <param name="Item">Of lists and maps: what they hold.</param>
internal sealed record Shape(ShapeKind Kind, Type Type, Shape? Item = null)
{
    public static Shape Of(Type type)
    {
        type = Nullable.GetUnderlyingType(type) ?? type;
        if (type == typeof(string)) return new(ShapeKind.Text, type);
        if (type == typeof(bool)) return new(ShapeKind.Flag, type);
        if (type == typeof(int)) return new(ShapeKind.Whole, type);
        if (type == typeof(double)) return new(ShapeKind.Real, type);
        if (type == typeof(Fraction)) return new(ShapeKind.Factor, type);
        if (type == typeof(Quantity)) return new(ShapeKind.Quantity, type);
        if (type == typeof(Unit)) return new(ShapeKind.Unit, type);
        if (type == typeof(Condition)) return new(ShapeKind.Condition, type);
        if (type == typeof(GearRatio)) return new(ShapeKind.Gear, type);
        if (type.IsEnum) return new(ShapeKind.Choice, type);
        if (Variants.Of(type) is not null) return new(ShapeKind.Variant, type);
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
            return new(ShapeKind.List, type, Of(type.GetGenericArguments()[0]));
        if (type.IsGenericType && type.GetGenericTypeDefinition() == typeof(IReadOnlyDictionary<,>))
            return new(ShapeKind.Map, type, Of(type.GetGenericArguments()[1]));
        return new(ShapeKind.Record, type);
    }
}

/// <summary>One member of a record of a plan or scenario.</summary>
internal sealed record PlanMember(PropertyInfo Property)
{
    /// <summary>Its name in JSON.</summary>
    public string Name { get; } = Property.GetCustomAttribute<JsonPropertyNameAttribute>()?.Name ?? JsonNamingPolicy.CamelCase.ConvertName(Property.Name);

    public Shape Shape { get; } = Shape.Of(Property.PropertyType);

    public bool IsRequired { get; } = Property.IsDefined(typeof(RequiredMemberAttribute));

    public KindAttribute? Kind { get; } = Property.GetCustomAttribute<KindAttribute>();

    /// <summary>Channels that must be there where the member is set.</summary>
    public IReadOnlyList<Kind> Needs { get; } = Property.GetCustomAttribute<NeedsAttribute>()?.Channels ?? [];

    /// <summary>The word for null, if there is one.</summary>
    public string? NullWord { get; } = Property.GetCustomAttribute<NullWordAttribute>()?.Word;

    public bool IsAlwaysWritten { get; } = Property.IsDefined(typeof(AlwaysWrittenAttribute)) || Property.IsDefined(typeof(RequiredMemberAttribute));

    public bool IsAnyScalar { get; } = Property.IsDefined(typeof(AnyScalarAttribute));

    public object? Get(object owner) => Property.GetValue(owner);

    public void Set(object owner, object? value) => Property.SetValue(owner, value);
}

/// <summary>A record of a plan or scenario as reader, writer, checks and schema see it.</summary>
internal sealed class PlanType
{
    private static readonly ConcurrentDictionary<Type, PlanType> Known = new();

    private PlanType(Type type)
    {
        Type = type;
        // Derived records list what they share first: name, request, delay, filter, reaction, then their own.
        Members = [.. type.GetProperties().Where(property => property.CanWrite && !property.IsDefined(typeof(JsonIgnoreAttribute)))
            .OrderBy(property => property.DeclaringType == type ? 1 : 0).ThenBy(property => property.MetadataToken).Select(property => new PlanMember(property))];
        Needs = type.GetCustomAttribute<NeedsAttribute>()?.Channels ?? [];
        ExactlyOneOf = type.GetCustomAttribute<ExactlyOneOfAttribute>()?.Members ?? [];
        AtLeastOneOf = type.GetCustomAttribute<AtLeastOneOfAttribute>()?.Members ?? [];
        Output = type.GetCustomAttribute<OutputFunctionAttribute>();
    }

    public Type Type { get; }

    public IReadOnlyList<PlanMember> Members { get; }

    public IReadOnlyList<Kind> Needs { get; }

    public IReadOnlyList<string> ExactlyOneOf { get; }

    public IReadOnlyList<string> AtLeastOneOf { get; }

    public OutputFunctionAttribute? Output { get; }

    public static bool IsRecord(Type type) => Shape.Of(type).Kind == ShapeKind.Record;

    public static PlanType Of(Type type) => Known.GetOrAdd(type, static t => new(t));

    public PlanMember? Find(string name) => Members.FirstOrDefault(member => member.Name == name);

    /// <summary>A record with its defaults. Required members stay null until they are set.</summary>
    public object Create() => Activator.CreateInstance(Type)!;

    /// <summary>The entries of a map of any value type.</summary>
    public static IEnumerable<(string Name, object? Value)> Entries(object map)
    {
        foreach (var entry in (IEnumerable)map)
        {
            var type = entry.GetType();
            yield return ((string)type.GetProperty("Key")!.GetValue(entry)!, type.GetProperty("Value")!.GetValue(entry));
        }
    }
}
