using MonitorSim.Plans;

namespace MonitorSim.Tests.Plans;

// Plans of the worked cases beside the repository (see their README).
public class CasePlansTests
{
    private static IEnumerable<string> Folders()
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository");
        return Directory.EnumerateFiles(SharedFolder.Cases!, "plan.json", SearchOption.AllDirectories).Select(plan => Path.GetDirectoryName(plan)!).Order(StringComparer.Ordinal);
    }

    [SkippableFact]
    public void Every_case_is_read_unless_it_has_to_be_refused()
    {
        var wrong = new List<string>();
        foreach (var folder in Folders())
        {
            var refused = File.Exists(Path.Combine(folder, "refused.txt"));
            try
            {
                PlanReader.Read(Path.Combine(folder, "plan.json"));
                if (refused) wrong.Add($"{folder} is read although it has to be refused");
            }
            catch (InputException e)
            {
                if (!refused) wrong.Add(e.Message);
            }
        }

        Assert.Empty(wrong);
    }

    [SkippableFact]
    public void A_refused_case_is_refused_for_its_reason()
    {
        Skip.If(SharedFolder.Cases is null, "the worked cases are not beside the repository");
        var e = Assert.Throws<InputException>(() => PlanReader.Parse(File.ReadAllBytes(Path.Combine(SharedFolder.Cases!, "full", "case-0120", "plan.json")), "plan.json"));
        Assert.Equal(
            [
                "plan.json(172,16): torque: the two recordings are of different kinds: force and rotary torque; give both a unit of one kind",
                "plan.json(175,15): unit: unit 'N' is no rotary torque; would do: N·m, Nm, kN·m, mN·m; the motor turns: what moves like the axis is of the load side",
                "plan.json(176,17): offset: unit 'N' is no rotary torque; would do: N·m, Nm, kN·m, mN·m",
            ],
            e.Problems.Select(problem => problem.ToString()));
    }
}
