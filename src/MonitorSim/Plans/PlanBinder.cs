using System.Collections;
using Fractions;
using MonitorSim.Quantities;

namespace MonitorSim.Plans;

/// <summary>Makes records of a JSON tree, and remembers where each member stood. What cannot be read is reported and left unset.</summary>
internal sealed class PlanBinder
{
    private readonly Dictionary<string, (int Line, int Column)> _places = new(StringComparer.Ordinal);
    private readonly ScalarBinder _scalars;

    public PlanBinder() => _scalars = new(Report);

    public List<Finding> Findings { get; } = [];

    public T Bind<T>(JsonTree.Object root) => (T)Record(root, PlanType.Of(typeof(T)), PlanPath.Root, ["$schema"]);

    /// <summary>A record of a type that is known at run time only.</summary>
    public object Bind(Type type, JsonTree.Object root) => Record(root, PlanType.Of(type), PlanPath.Root, []);

    /// <summary>Line and column of a path, or of the nearest that is there around it.</summary>
    public (int Line, int Column) Place(PlanPath path)
    {
        for (PlanPath? at = path; at is not null; at = at.Parent)
            if (_places.TryGetValue(at.Text, out var place)) return place;
        return (1, 1);
    }

    private object Record(JsonTree.Object node, PlanType type, PlanPath path, string[] alsoAllowed, bool anyMember = false)
    {
        _places[path.Text] = (node.Line, node.Column);
        var record = type.Create();
        var enclosing = _scalars.Enter(type, node);
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (name, line, column, value) in node.Members)
        {
            if (!seen.Add(name))
            {
                Findings.Add(new(path.Member(name), $"'{name}' appears twice", "keep one") { Position = (line, column) });
                continue;
            }

            if (alsoAllowed.Contains(name, StringComparer.Ordinal)) continue;
            if (type.Find(name) is { } member)
            {
                // An explicit null is the same as nothing.
                if (Value(value, member.Shape, member, path.Member(name)) is { } bound) member.Set(record, bound);
            }
            else if (!anyMember)
            {
                var known = type.Members.Select(known => known.Name).Concat(alsoAllowed).ToList();
                Findings.Add(new(path.Member(name), $"unknown key '{name}'", ClosestName.Advice(name, known, "key")) { Position = (line, column) });
            }
        }

        foreach (var missing in type.Members.Where(member => member.IsRequired && node.Find(member.Name) is null or JsonTree.Null))
            Findings.Add(new(path.Member(missing.Name), $"'{missing.Name}' is missing", $"add {_scalars.Example(missing)}"));
        _scalars.Leave(enclosing);
        return record;
    }

    private object? Value(JsonTree node, Shape shape, PlanMember member, PlanPath path)
    {
        _places[path.Text] = (node.Line, node.Column);
        switch (shape.Kind, node)
        {
            case (_, JsonTree.Null): return null;
            case (ShapeKind.Record, JsonTree.Object record): return Record(record, PlanType.Of(shape.Type), path, []);
            case (ShapeKind.Variant, JsonTree.Object variant): return Variant(variant, Variants.Of(shape.Type)!, path);
            case (ShapeKind.List, JsonTree.Array list): return List(list, shape, member, path);
            case (ShapeKind.Map, JsonTree.Object map): return Map(map, shape, member, path);
            case (ShapeKind.Record or ShapeKind.Variant or ShapeKind.Map, _): return Report(path, $"expected an object, found {node.Noun}", "write { … }");
            case (ShapeKind.List, _): return Report(path, $"expected a list, found {node.Noun}", "write [ … ]");
            default: return _scalars.Read(node, shape, member, path);
        }
    }

    private object Variant(JsonTree.Object node, Variants family, PlanPath path)
    {
        var key = family.Key;
        var word = node.Find(key);
        var place = path.Member(key);
        if (word is not null) _places[place.Text] = (word.Line, word.Column);
        if (word is JsonTree.Text { Value: var name })
        {
            if (family.Find(name) is { } type) return Record(node, PlanType.Of(type), path, [key]);
            Report(place, $"unknown {key} '{name}'", ClosestName.Advice(name, family.Words, key));
        }
        else
        {
            Findings.Add(new(place, word is null ? $"'{key}' is missing" : $"{key}: expected text, found {word.Noun}", "write one of " + string.Join(", ", family.Words)));
        }

        return Record(node, PlanType.Of(family.Unknown), path, [key], anyMember: true);
    }

    private IList List(JsonTree.Array node, Shape shape, PlanMember member, PlanPath path)
    {
        // Items that cannot be read stay as null: the checks count and pass over them.
        var list = (IList)Activator.CreateInstance(typeof(List<>).MakeGenericType(shape.Item!.Type))!;
        for (var i = 0; i < node.Items.Count; i++)
        {
            if (node.Items[i] is JsonTree.Null nothing)
            {
                _places[path.Item(i).Text] = (nothing.Line, nothing.Column);
                Report(path.Item(i), "an item of the list is null", "leave it out");
            }

            list.Add(Value(node.Items[i], shape.Item, member, path.Item(i)));
        }

        return list;
    }

    private IDictionary Map(JsonTree.Object node, Shape shape, PlanMember member, PlanPath path)
    {
        var map = (IDictionary)Activator.CreateInstance(typeof(Dictionary<,>).MakeGenericType(typeof(string), shape.Item!.Type), StringComparer.Ordinal)!;
        foreach (var (name, line, column, value) in node.Members)
        {
            if (map.Contains(name)) Findings.Add(new(path.Member(name), $"'{name}' appears twice", "keep one") { Position = (line, column) });
            else if (value is JsonTree.Null) Findings.Add(new(path.Member(name), $"'{name}' is null", "describe it, or leave it out") { Position = (line, column) });
            else map.Add(name, Value(value, shape.Item, member, path.Member(name)));
        }

        return map;
    }

    private object? Report(PlanPath path, string what, string fix)
    {
        Findings.Add(new(path, $"{path.Name}: {what}", fix));
        return null;
    }
}
