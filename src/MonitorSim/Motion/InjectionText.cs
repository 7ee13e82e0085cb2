using Fractions;
using MonitorSim.Motion.Faults;
using MonitorSim.Plans;
using MonitorSim.Quantities;

namespace MonitorSim.Motion;

/// <summary>Faults of a replay in words: TARGET FAULT [MEMBER VALUE]…, the members being those that the fault has in JSON.</summary>
internal static class InjectionText
{
    private const string Acknowledgement = "acknowledgement", Late = "late", By = "by", Second = ".second";
    private const string Example = "write one such as \"lift runaway from 1.2 s\" or \"lift.velocity stuck from 2 s until 2.1 s\"";

    private static readonly Kind[] Channels = [Kind.Position, Kind.Velocity, Kind.Acceleration, Kind.Torque, Kind.Temperature];
    private static readonly Variants Sensors = Variants.Of(typeof(ChannelFault))!;
    private static readonly IReadOnlyList<string> Words = [.. MachineFaults.Words, .. Sensors.Words, Late];
    private static readonly IReadOnlySet<string> Members =
        Words.Where(word => word != Late).SelectMany(word => PlanType.Of(TypeOf(word)!).Members).Select(member => member.Name).ToHashSet(StringComparer.Ordinal);

    public static string Of(Injection injection) => injection switch
    {
        MachineInjection machine => $"{machine.Axis} {Said(machine.Fault, machine.Fault.Fault)}",
        ChannelInjection channel => $"{channel.Axis}.{Choice.Name(channel.Channel)}{(channel.IsSecond ? Second : "")} {Said(channel.Fault, channel.Fault.Fault)}",
        LateAcknowledgement late => $"{Acknowledgement} {Late} {By} {late.Delay}",
        _ => injection.ToString(),
    };

    public static Injection Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        var at = Array.FindIndex(words, word => Words.Contains(word, StringComparer.Ordinal));
        if (at < 1)
        {
            throw Wrong(text, words.Length < 2 ? "this names no axis and fault" : at == 0 ? "this begins with the fault" : $"there is no fault '{words[1]}'",
                words.Length < 2 || at == 0 ? Example : ClosestName.Advice(words[1], Words, "fault"));
        }

        var (target, fault, members) = (string.Join(' ', words[..at]), words[at], MembersOf(text, words[(at + 1)..]));
        if (fault == Late) return new LateAcknowledgement(Delay(text, target, members));
        var isSecond = target.EndsWith(Second, StringComparison.Ordinal);
        var channel = isSecond ? target[..^Second.Length] : target;
        var kind = Channels.Cast<Kind?>().FirstOrDefault(kind => channel.EndsWith($".{Choice.Name(kind!.Value)}", StringComparison.Ordinal));
        var record = Record(text, TypeOf(fault)!, members);
        if (record is MachineFault machine)
            return kind is null && !isSecond ? new MachineInjection(target, machine) : throw Wrong(text, $"{fault} concerns the axis, not a channel of it", $"name the axis alone, such as \"lift {fault}\"");
        return kind is { } of ? new ChannelInjection(channel[..^(Choice.Name(of).Length + 1)], of, (ChannelFault)record, isSecond)
            : throw Wrong(text, $"{fault} concerns a channel, and '{target}' names none", $"name it, such as \"{target}.velocity {fault}\"; channels are: {string.Join(", ", Channels.Select(kind => Choice.Name(kind)))}");
    }

    private static Type? TypeOf(string word) => Sensors.Find(word) ?? (MachineFaults.Words.Contains(word) ? MachineFaults.Named(word).GetType() : null);

    // A value lasts until the next member: quantities have spaces in them.
    private static List<(string Name, string Value)> MembersOf(string text, string[] words)
    {
        var members = new List<(string Name, string Value)>();
        foreach (var word in words)
        {
            if (Members.Contains(word)) members.Add((word, ""));
            else if (members.Count == 0) throw Wrong(text, $"'{word}' is nothing that a fault has", ClosestName.Advice(word, [.. Members], "member"));
            else members[^1] = (members[^1].Name, $"{members[^1].Value} {word}".TrimStart());
        }

        return members;
    }

    private static object Record(string text, Type type, List<(string Name, string Value)> members)
    {
        var shape = PlanType.Of(type);
        var binder = new PlanBinder();
        var record = binder.Bind(type, new(1, 1, [.. members.Select(member => new JsonTree.Member(member.Name, 1, 1, Node(shape.Find(member.Name), member.Value)))]));
        return binder.Findings.Count == 0 ? record : throw new InputException([.. binder.Findings.Select(finding => finding.At($"fault \"{text}\""))]);
    }

    private static JsonTree Node(PlanMember? member, string value) =>
        member?.Shape.Kind == ShapeKind.Factor && NumberText.TryRead(value, out _) ? new JsonTree.Number(1, 1, value) : new JsonTree.Text(1, 1, value);

    private static Quantity Delay(string text, string target, List<(string Name, string Value)> members)
    {
        if (target == Acknowledgement && members is [(By, var value)] && Quantity.TryParse(value, out var delay, out _) && delay!.Unit.Dimension == Dimension.Second && !delay.Number.IsNegative) return delay;
        throw Wrong(text, "an acknowledgement is late by a time of 0 or more", $"write one such as \"{Acknowledgement} {Late} {By} 250 ms\"");
    }

    private static string Said(object fault, string word)
    {
        var plain = PlanType.Of(fault.GetType()).Create();
        var members = PlanType.Of(fault.GetType()).Members.Where(member => member.Get(fault) is { } value && !value.Equals(member.Get(plain)));
        return string.Join(' ', [word, .. members.Select(member => $"{member.Name} {Value(member.Get(fault)!)}")]);
    }

    private static string Value(object value) => value switch
    {
        Enum choice => Choice.Name(choice),
        Fraction factor => NumberText.Exact(factor),
        _ => value.ToString()!,
    };

    private static InputException Wrong(string text, string what, string fix) => new(new Problem($"fault \"{text}\"", what, fix));
}
