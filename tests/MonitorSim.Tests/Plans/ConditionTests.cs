using MonitorSim.Plans;
using E = MonitorSim.Plans.Expression;

namespace MonitorSim.Tests.Plans;

public class ConditionTests
{
    private static E S(string name) => new E.Signal(name);

    public static TheoryData<string, E> Readings() => new()
    {
        { "gateOpen", S("gateOpen") },
        { "always", new E.Constant(true) },
        { "never", new E.Constant(false) },
        { "a or b and c", new E.Or(S("a"), new E.And(S("b"), S("c"))) },
        { "a and b or c", new E.Or(new E.And(S("a"), S("b")), S("c")) },
        { "(a or b) and c", new E.And(new E.Or(S("a"), S("b")), S("c")) },
        { "not a and b", new E.And(new E.Not(S("a")), S("b")) },
        { "not (a and b)", new E.Not(new E.And(S("a"), S("b"))) },
        { "not not a", new E.Not(new E.Not(S("a"))) },
        { "a or b or c", new E.Or(new E.Or(S("a"), S("b")), S("c")) },
        { "\"hold on\"and\"not\"", new E.And(S("hold on"), S("not")) },
        { "\"a \\\"b\\\" \\\\ c\"", S("a \"b\" \\ c") },
        { "bridge.\"set-up speed\"", new E.Monitor("bridge", "set-up speed") },
        { "\"x axis\".SLS_2", new E.Monitor("x axis", "SLS_2") },
        { "bridge.\"state\"", new E.Monitor("bridge", "state") },
        { "bridge.SBC", new E.Monitor("bridge", "SBC") },
        { "bridge . state==TorqueOff", new E.State("bridge", AxisState.TorqueOff, true) },
        { "table.state != Running", new E.State("table", AxisState.Running, false) },
        { "Stop and tür_2 or Überlauf", new E.Or(new E.And(S("Stop"), S("tür_2")), S("Überlauf")) },
        { "Info", S("Info") },
    };

    [Theory]
    [MemberData(nameof(Readings))]
    public void An_expression_means(string text, E root) => InCulture.Each(() => Assert.Equal(root, Condition.Parse(text).Root));

    [Theory]
    [InlineData("", "the expression ends too early (character 1 of the expression); write a signal, axis.monitor, axis.state == TorqueOff, always, never or '('")]
    [InlineData("a and", "the expression ends too early (character 6 of the expression); write a signal, axis.monitor, axis.state == TorqueOff, always, never or '('")]
    [InlineData("a b", "'b' is out of place (character 3 of the expression); write 'and' or 'or' between two conditions")]
    [InlineData("(a or b", "'(' is not closed (character 1 of the expression); add ')'")]
    [InlineData("a)", "')' is out of place (character 2 of the expression); write 'and' or 'or' between two conditions")]
    [InlineData("a AND b", "'AND' is out of place (character 3 of the expression); write 'and' or 'or' between two conditions")]
    [InlineData("NOT a", "'NOT' is no keyword (character 1 of the expression); keywords are lower-case: write 'not', or quote a name")]
    [InlineData("a && b", "'&' is no operator (character 3 of the expression); write 'and'")]
    [InlineData("!a", "'!' is no operator (character 1 of the expression); write 'not'")]
    [InlineData("set-up", "'-' belongs to no name (character 4 of the expression); quote names of other characters than letters, digits and _, as in \"set-up speed\"")]
    [InlineData("\"set", "the quoted name is not closed (character 1 of the expression); add '\"'")]
    [InlineData("b.state", "the expression ends too early (character 8 of the expression); compare the state: == or != and one of Running, Holding, StoppingToHold, StoppingToOff, TorqueOff")]
    [InlineData("b.state == torqueOff", "'torqueOff' is no state (character 12 of the expression); did you mean 'TorqueOff'?")]
    [InlineData("b.state == Moving", "'Moving' is no state (character 12 of the expression); did you mean 'Holding'?")]
    [InlineData("b.state = Running", "'=' compares nothing (character 9 of the expression); write '=='")]
    [InlineData("gate == Running", "'==' compares 'gate', which is no state (character 6 of the expression); compare a state, as in axis.state == TorqueOff; a signal stands alone or after 'not'")]
    [InlineData("b.", "the expression ends too early (character 3 of the expression); write a monitor of 'b', or state")]
    public void What_is_no_expression_says_where_and_what_would_do(string text, string error) => InCulture.Each(() =>
        Assert.Equal(error, Assert.Throws<FormatException>(() => Condition.Parse(text)).Message));

    [Fact]
    public void Nesting_has_a_limit()
    {
        Condition.Parse(new string('(', 60) + "a" + new string(')', 60));
        Assert.Contains("too many conditions", Assert.Throws<FormatException>(() => Condition.Parse(new string('(', 100_000) + "a")).Message, StringComparison.Ordinal);
        Assert.Contains("too many conditions", Assert.Throws<FormatException>(() => Condition.Parse(string.Join(" or ", Enumerable.Repeat("a", 100_000)))).Message, StringComparison.Ordinal);
    }
}
