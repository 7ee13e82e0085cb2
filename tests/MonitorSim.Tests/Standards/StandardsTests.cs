namespace MonitorSim.Tests.Standards;

/// <summary>What the open standards say of each function and category, replayed. Nothing here was copied from a standard's text: the definitions are quoted from
/// memory, in our own words; the limit of every case is met exactly before it is passed.</summary>
public class StandardsTests
{
    private static readonly Definition[] All = [.. StopDefinitions.All, .. MonitoringDefinitions.All, .. StopCategories.All];

    public static TheoryData<int, string> Rows()
    {
        var rows = new TheoryData<int, string>();
        for (var i = 0; i < All.Length; i++) rows.Add(i, All[i].ToString());
        return rows;
    }

    [Theory]
    [MemberData(nameof(Rows))]
    public void A_function_does_what_its_definition_says(int row, string name) =>
        Assert.True(All[row].Happens.SequenceEqual(All[row].Replayed()), $"{name}: {All[row].Sentence}\nexpected: {string.Join("; ", All[row].Happens)}\nfound: {string.Join("; ", All[row].Replayed())}");

    // The abbreviations of IEC 61800-5-2 that the project's page names.
    [Theory]
    [InlineData("STO SS1-t SS1-r SS1-d SS2-t SS2-r SS2-d SOS SBC SLS SSR SLA SAR SLT STR SLP SLI SDI SMT SCA SSM")]
    public void Every_function_has_its_definition(string functions) =>
        Assert.All(functions.Split(' '), function => Assert.Contains(All, definition => definition.Name.Split(' ', ',')[0] == function));
}
