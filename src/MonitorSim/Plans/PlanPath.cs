using System.Globalization;

namespace MonitorSim.Plans;

/// <summary>Where in a plan something stands, such as <c>axes.bridge.monitors[0].limit</c>.</summary>
internal sealed record PlanPath
{
    public static readonly PlanPath Root = new(null, "", "");

    private PlanPath(PlanPath? parent, string text, string name) => (Parent, Text, Name) = (parent, text, name);

    public PlanPath? Parent { get; }

    public string Text { get; }

    /// <summary>The last member's name, for the beginning of a message.</summary>
    public string Name { get; }

    public PlanPath Member(string name)
    {
        var written = ConditionParser.Quote(name);
        return new(this, Text.Length == 0 ? written : $"{Text}.{written}", name);
    }

    /// <summary>An item of a list; messages name it as its list.</summary>
    public PlanPath Item(int index) => new(this, $"{Text}[{index.ToString(CultureInfo.InvariantCulture)}]", Name);

    /// <summary>Whether one is the other or contains it.</summary>
    public bool Touches(PlanPath other) => Contains(other) || other.Contains(this);

    private bool Contains(PlanPath other)
    {
        for (var path = other; path is not null; path = path.Parent)
            if (path.Text == Text) return true;
        return false;
    }
}
