using System.Globalization;
using Fractions;
using MonitorSim.Quantities;
using MonitorSim.Synthesis;

namespace MonitorSim.Plans;

/// <summary>Reads texts, numbers and flags into the types of a plan; errors name the units or words that would do there.</summary>
internal sealed class ScalarBinder(Func<PlanPath, string, string, object?> report)
{
    // Units that would do follow from the axis around, whose motion may be written after the member in question.
    private Surroundings _around = new(null, null, null);

    /// <summary>What is around a member, as far as it has been written legibly.</summary>
    public sealed record Surroundings(bool? Rotary, bool? Torque, Kind? Channel);

    /// <summary>Looks ahead into a record that is about to be read; the result is for <see cref="Leave"/>.</summary>
    public Surroundings Enter(PlanType type, JsonTree.Object node)
    {
        var before = _around;
        if (type.Type == typeof(AxisPlan))
        {
            var rotary = (node.Find("motion") as JsonTree.Text)?.Value == "rotary";
            var channel = (node.Find("channels") as JsonTree.Object)?.Find("torque") as JsonTree.Object;
            var symbol = (channel?.Find("unit") as JsonTree.Text)?.Value;
            bool? torque = symbol is not null && Unit.TryParse(symbol, out var unit, out _) ? unit!.Dimension == Dimension.NewtonMetre : null;
            if ((channel?.Find("side") as JsonTree.Text)?.Value == "motor") torque = rotary;
            _around = new(rotary, torque, null);
        }
        else if (type.Type == typeof(ScenarioAxis))
        {
            _around = new((node.Find("motion") as JsonTree.Text)?.Value == "rotary", null, null);
        }
        else if (type.Type == typeof(ScenarioColumn))
        {
            var of = (node.Find("of") as JsonTree.Text)?.Value;
            _around = _around with { Channel = of is not null && Choice.Value(typeof(ScenarioQuantity), of) is ScenarioQuantity quantity ? ScenarioColumn.KindOf(quantity) : null };
        }

        return before;
    }

    /// <summary>Goes back to what was around before.</summary>
    public void Leave(Surroundings before) => _around = before;

    /// <summary>How a missing member is written.</summary>
    public string Example(PlanMember member) => member.Shape.Kind switch
    {
        ShapeKind.Quantity when Units(member, PlanPath.Root) is { } units => $"\"{member.Name}\": \"… {units.Examples[0]}\"",
        ShapeKind.Choice => $"\"{member.Name}\": one of {Words(member.Shape.Type)}",
        ShapeKind.List => $"\"{member.Name}\": [ … ]",
        _ => $"\"{member.Name}\": \"…\"",
    };

    public object? Read(JsonTree node, Shape shape, PlanMember member, PlanPath path)
    {
        switch (shape.Kind, node)
        {
            case (ShapeKind.Text, JsonTree.Text text): return text.Value;
            case (ShapeKind.Text, JsonTree.Number number) when member.IsAnyScalar: return number.Value;
            case (ShapeKind.Text, JsonTree.Flag flag) when member.IsAnyScalar: return flag.Value ? "true" : "false";
            case (ShapeKind.Flag, JsonTree.Flag flag): return flag.Value;
            case (ShapeKind.Whole, JsonTree.Number number): return Whole(number.Value, path);
            case (ShapeKind.Real, JsonTree.Number number): return double.Parse(number.Value, NumberStyles.Float, CultureInfo.InvariantCulture);
            case (ShapeKind.Factor, JsonTree.Number number):
                return NumberText.TryRead(number.Value, out var factor) ? factor : report(path, $"{number.Value} is out of range", "write a number with an exponent up to 400");
            case (ShapeKind.Quantity, JsonTree.Text text): return Quantity(text.Value, member, path);
            case (ShapeKind.Quantity, JsonTree.Number number): return report(path, $"{number.Value} has no unit", WithUnits(number.Value, member, path));
            case (ShapeKind.Unit, JsonTree.Text text): return Unit.TryParse(text.Value, out var unit, out var error) ? unit : Split(path, error!, member);
            case (ShapeKind.Condition, JsonTree.Text text): return Try(path, () => Condition.Parse(text.Value));
            case (ShapeKind.Gear, JsonTree.Text text): return Try(path, () => (GearRatio)text.Value);
            case (ShapeKind.Choice, JsonTree.Text text):
                return Choice.Value(shape.Type, text.Value) ?? report(path, $"unknown word '{text.Value}'", Advice(text.Value, shape.Type));
            default: return report(path, $"expected {Expected(shape, member)}, found {node.Noun}", Fix(shape, member, path));
        }
    }

    private object? Whole(string text, PlanPath path) =>
        int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole) ? whole : report(path, $"{text} is no whole number", "write one such as 9");

    private object? Quantity(string text, PlanMember member, PlanPath path)
    {
        if (text == member.NullWord) return null;
        if (MonitorSim.Quantities.Quantity.TryParse(text, out var quantity, out var error)) return quantity;
        var trimmed = text.Trim();
        if (NumberText.TrySplit(trimmed, out _, out var rest) && rest.Length == 0) return report(path, $"'{trimmed}' has no unit", WithUnits(trimmed, member, path));
        return Split(path, error!, member);
    }

    /// <summary>Reports a message of the form "what; fix"; a fix that names no unit in particular gives way to those that would do here.</summary>
    private object? Split(PlanPath path, string message, PlanMember member)
    {
        var finding = Finding.Of(path, message);
        var fix = finding.Fix.StartsWith("did you mean", StringComparison.Ordinal) || Units(member, path) is not { } units ? finding.Fix : units.WouldDo;
        return report(path, finding.What[(path.Name.Length + 2)..], fix);
    }

    private object? Try(PlanPath path, Func<object> read)
    {
        try
        {
            return read();
        }
        catch (FormatException e)
        {
            var finding = Finding.Of(path, e.Message);
            return report(path, finding.What[(path.Name.Length + 2)..], finding.Fix);
        }
    }

    private string WithUnits(string number, PlanMember member, PlanPath path)
    {
        var word = member.NullWord is { } nothing ? $", or \"{nothing}\"" : "";
        return Units(member, path) is { } units ? $"would do: {string.Join(", ", units.Examples.Select(unit => $"\"{number} {unit}\""))}{word}" : $"write \"{number}\" with a unit{word}";
    }

    private KindUnits? Units(PlanMember member, PlanPath path)
    {
        if (member.Kind?.Kind is not { } kind) return null;
        if (kind is Kind.Channel or Kind.ChannelDifference)
        {
            if ((_around.Channel ?? Channel(path)) is not { } channel) return null;
            kind = channel == Kind.Temperature && kind == Kind.ChannelDifference ? Kind.TemperatureDifference : channel;
        }

        return kind switch
        {
            Kind.Torque => _around.Torque is { } torque ? KindUnits.Of(kind, torque) : KindUnits.TorqueOrForce,
            _ => KindUnits.Of(kind, _around.Rotary ?? false),
        };
    }

    private static Kind? Channel(PlanPath path)
    {
        for (PlanPath? at = path; at is not null; at = at.Parent)
            if (at.Parent?.Name == "channels" && Choice.Value(typeof(Kind), at.Name) is Kind kind) return kind;
        return null;
    }

    private static string Words(Type type) => string.Join(", ", Choice.Names(type).Select(name => $"\"{name}\""));

    private static string Advice(string name, Type type) => ClosestName.Of(name, Choice.Names(type)) is { } closest ? $"did you mean '{closest}'?" : "write one of " + Words(type);

    private static string Expected(Shape shape, PlanMember member) => shape.Kind switch
    {
        ShapeKind.Text when member.IsAnyScalar => "text, a number, true or false",
        ShapeKind.Flag => "true or false",
        ShapeKind.Whole => "a whole number",
        ShapeKind.Real or ShapeKind.Factor => "a number",
        ShapeKind.Quantity => "a quantity as text",
        ShapeKind.Unit => "a unit as text",
        ShapeKind.Condition => "an expression as text",
        ShapeKind.Gear => "a ratio as text",
        _ => "text",
    };

    private string Fix(Shape shape, PlanMember member, PlanPath path) => shape.Kind switch
    {
        ShapeKind.Flag => "write true or false",
        ShapeKind.Whole => "write one such as 9",
        ShapeKind.Real or ShapeKind.Factor => "write one without quotes, such as 0.82",
        ShapeKind.Quantity when Units(member, path) is { } units => $"write one such as \"1 {units.Examples[0]}\"",
        ShapeKind.Unit when Units(member, path) is { } units => units.WouldDo,
        ShapeKind.Condition => "write one such as \"gateOpen and not handheld\"",
        ShapeKind.Gear => "write motor turns to output turns, such as \"5:1\"",
        ShapeKind.Choice => "write one of " + Words(shape.Type),
        _ => "write it in quotes",
    };
}
