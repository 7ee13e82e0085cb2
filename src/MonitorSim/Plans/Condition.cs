using System.Diagnostics.CodeAnalysis;

namespace MonitorSim.Plans;

/// <summary>A boolean expression of a plan: signals, monitors, states, and, or, not, always, never.</summary>
/// <param name="Text">As written.</param>
/// <param name="Root">What it means.</param>
public sealed record Condition(string Text, Expression Root)
{
    /// <summary>Reads an expression.</summary>
    /// <exception cref="FormatException">Not an expression; the message says where and what would do.</exception>
    public static Condition Parse(string text) => new(text, ConditionParser.Parse(text));

    /// <summary>As written.</summary>
    public override string ToString() => Text;

    /// <summary>Reads an expression, so that a plan in C# reads like one in JSON.</summary>
    [return: NotNullIfNotNull(nameof(text))]
    public static implicit operator Condition?(string? text) => text is null ? null : Parse(text);
}

/// <summary>A node of an expression.</summary>
public abstract record Expression
{
    private Expression() { }

    /// <summary><c>always</c> or <c>never</c>.</summary>
    public sealed record Constant(bool Value) : Expression;

    /// <summary>A signal's value.</summary>
    public sealed record Signal(string Name) : Expression;

    /// <summary><c>axis.monitor</c>: the output for SCA, SSM and SMT, else the latched trip.</summary>
    public sealed record Monitor(string Axis, string Name) : Expression;

    /// <summary><c>axis.state == State</c>, or <c>!=</c>.</summary>
    public sealed record State(string Axis, AxisState Value, bool Equal) : Expression;

    /// <summary>Negation.</summary>
    public sealed record Not(Expression Operand) : Expression;

    /// <summary>Both hold.</summary>
    public sealed record And(Expression Left, Expression Right) : Expression;

    /// <summary>At least one holds.</summary>
    public sealed record Or(Expression Left, Expression Right) : Expression;
}
