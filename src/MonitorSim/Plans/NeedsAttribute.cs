namespace MonitorSim.Plans;

/// <summary>Says which channels must be recorded or derivable: for a whole function, or for a parameter where it is set.</summary>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Property)]
public sealed class NeedsAttribute(params Kind[] channels) : Attribute
{
    /// <summary>The channels: position, velocity, acceleration, torque or temperature.</summary>
    public IReadOnlyList<Kind> Channels { get; } = channels;
}

/// <summary>A function with an output: <c>axis.monitor</c> is that output, and it reacts only where it can trip and is told how.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class OutputFunctionAttribute : Attribute
{
    /// <summary>Whether it trips where a reaction is set.</summary>
    public bool CanTrip { get; init; }
}

/// <summary>Exactly one of these members has to be set.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class ExactlyOneOfAttribute(params string[] members) : Attribute
{
    /// <summary>Names as in JSON.</summary>
    public IReadOnlyList<string> Members { get; } = members;
}

/// <summary>At least one of these members has to be set.</summary>
[AttributeUsage(AttributeTargets.Class)]
public sealed class AtLeastOneOfAttribute(params string[] members) : Attribute
{
    /// <summary>Names as in JSON.</summary>
    public IReadOnlyList<string> Members { get; } = members;
}

/// <summary>A word that JSON writes for null.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class NullWordAttribute(string word) : Attribute
{
    public string Word { get; } = word;
}

/// <summary>Text that JSON may also write as a number or as true or false.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class AnyScalarAttribute : Attribute;

/// <summary>Written to JSON even where it is the default, because a reader wants to see it.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class AlwaysWrittenAttribute : Attribute;
