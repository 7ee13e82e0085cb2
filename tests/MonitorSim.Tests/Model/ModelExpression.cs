using System.Text.RegularExpressions;

namespace MonitorSim.Tests.Model;

/// <summary>What an expression may read.</summary>
internal interface IModelWorld
{
    bool Signal(string name);

    /// <summary>The output or latched trip of a monitor at the cycle before.</summary>
    bool Output(string axis, string monitor);

    /// <summary>The state of an axis at the cycle before.</summary>
    string State(string axis);
}

/// <summary>An expression of a request: or of and of not; names may be quoted.</summary>
internal sealed partial class ModelExpression
{
    private readonly List<string> _tokens;
    private readonly IModelWorld _world;
    private int _at;

    private ModelExpression(string text, IModelWorld world) => (_tokens, _world) = ([.. Token().Matches(text).Select(m => m.Value)], world);

    public static bool Evaluate(string text, IModelWorld world) => new ModelExpression(text, world).Or();

    /// <summary>Whether it reads an output, a trip or a state.</summary>
    public static bool ReadsState(string text) => Token().Matches(text).Any(m => m.Value == ".");

    private bool Or()
    {
        var value = And();
        while (Take("or")) value |= And();
        return value;
    }

    private bool And()
    {
        var value = Not();
        while (Take("and")) value &= Not();
        return value;
    }

    private bool Not()
    {
        if (Take("not")) return !Not();
        if (Take("("))
        {
            var value = Or();
            Take(")");
            return value;
        }

        if (Take("always")) return true;
        if (Take("never")) return false;
        var name = Name();
        if (!Take(".")) return _world.Signal(name);
        var member = Name();
        if (member != "state") return _world.Output(name, member);
        var isEqual = Take("==");
        if (!isEqual) Take("!=");
        return _world.State(name) == Name() == isEqual;
    }

    private string Name() => _tokens[_at++].Trim('"');

    private bool Take(string token)
    {
        if (_at >= _tokens.Count || _tokens[_at] != token) return false;
        _at++;
        return true;
    }

    [GeneratedRegex("\"[^\"]*\"|==|!=|[().]|[\\p{L}\\d_]+")]
    private static partial Regex Token();
}
