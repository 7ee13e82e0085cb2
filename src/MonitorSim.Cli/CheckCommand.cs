using System.CommandLine;
using System.Globalization;
using System.Xml;
using System.Xml.Linq;
using MonitorSim.Plans;
using MonitorSim.Traces;

namespace MonitorSim.Cli;

/// <summary><c>check PLAN TRACE…</c></summary>
internal static class CheckCommand
{
    public static Command Create(Terminal terminal)
    {
        var (plan, traces, quiet, noColor) = (Arguments.Plan(), Arguments.Traces(), Arguments.Quiet(), Arguments.NoColor());
        var junit = Arguments.File("--junit", "Writes the outcome as JUnit XML for build servers; - is standard output.");
        var command = new Command("check", "Holds replays against the plan's expect lines. Example: monitorsim check saw.json monday.csv --junit check.xml")
            { plan, traces, junit, quiet, noColor };
        command.SetAction(parsed => CommandLine.Guard(terminal, () =>
        {
            var read = Input.Plan(parsed.GetValue(plan)!, terminal.Cancel);
            var said = parsed.GetValue(quiet) || parsed.GetValue(junit) == "-" ? terminal.Quiet() : terminal;
            if (read.Expect.Count == 0) throw new InputException(new Problem(parsed.GetValue(plan)!, "the plan expects nothing", "add \"expect\" lines"));
            var outcomes = parsed.GetValue(traces)!.Select(file => (File: file, Result: Replay.Run(read, PlannedTrace.Read(read, file, terminal.Cancel), terminal.Cancel))).ToList();
            foreach (var (file, result) in outcomes)
                foreach (var line in result.Expect) said.Out.WriteLine(PrintableText.Of($"{(line.Holds ? "holds" : "FAILS")}  {file}  expect[{line.Index}]  {line.Because}"));
            said.Out.WriteLine(Cautions.Text);
            if (parsed.GetValue(junit) is { } path) terminal.Write(path, stream => JUnit(outcomes).Save(stream));
            return outcomes.All(outcome => outcome.Result.Expect.All(line => line.Holds)) ? CommandLine.Clean : CommandLine.Tripped;
        }));
        return command;
    }

    private static XDocument JUnit(IReadOnlyList<(string File, ReplayResult Result)> outcomes) => new(new XElement("testsuites", outcomes.Select(outcome => new XElement("testsuite",
        new XAttribute("name", Printable(outcome.File)),
        new XAttribute("tests", outcome.Result.Expect.Count),
        new XAttribute("failures", outcome.Result.Expect.Count(line => !line.Holds)),
        outcome.Result.Expect.Select(line => new XElement("testcase",
            new XAttribute("classname", Printable(outcome.Result.Plan.Title)),
            new XAttribute("name", string.Create(CultureInfo.InvariantCulture, $"expect[{line.Index}]")),
            line.Holds ? null : new XElement("failure", new XAttribute("message", Printable(line.Because)))))))));

    // XML has no way to write most control characters; a plan's names may hold them.
    private static string Printable(string? text) => string.Concat((text ?? "").EnumerateRunes().Select(rune =>
        rune.Value > char.MaxValue || XmlConvert.IsXmlChar((char)rune.Value) ? rune.ToString() : "\uFFFD"));
}
