using MonitorSim.Plans;

namespace MonitorSim.Tests.Plans;

/// <summary>One sound plan, and what is said about every way to spoil it.</summary>
public class PlanErrorTests
{
    private const string Sound = """
        { // comments and trailing commas are allowed
          "plan": 1,
          "cycle": "4 ms", "phase": "1 ms",
          "trace": { "time": { "column": "Time", "unit": "ms" }, "delimiter": ";", "decimal": "," },
          "signals": { "gateOpen": { "column": "DI_7" }, "hold on": { "windows": [["1.2 s", "4 s"]] } },
          "acknowledge": { "signal": "gateOpen" },
          "groups": { "saw": ["bridge", "table"] },
          "axes": {
            "bridge": {
              "motion": "linear", "feed": "20 mm/rev", "gear": "5:1",
              "channels": {
                "position": { "column": "X", "unit": "rev", "side": "motor" },
                "velocity": { "from": "position", "estimator": { "name": "savitzkyGolay", "samples": 9, "degree": 2 } },
                "torque": { "column": "Q", "unit": "N", "second": { "column": "Q2", "tolerance": "5 N" } },
              },
              "stops": { "STO": {}, "SS1": { "variant": "r", "deceleration": "1.5 m/s²", "tolerance": "15 mm/s" } },
              "monitors": [
                { "name": "speed", "function": "SLS", "request": "gateOpen", "limit": "33 mm/s", "reaction": "stop 1" },
                { "name": "cam", "function": "SCA", "ranges": [["0 mm", "10 mm"]], "hysteresis": "1 mm" },
                { "name": "slow", "function": "SSM", "upper": "5 mm/s" },
              ],
            },
            "table": {
              "motion": "rotary", "modulo": "360 deg",
              "channels": { "position": { "column": "C", "unit": "deg" } },
              "stops": { "STO": {}, "SS1": { "variant": "t", "time": "100 ms" } },
              "monitors": [ { "name": "parked", "function": "SLP", "lower": "350 deg", "upper": "10 deg" } ],
            },
          },
          "expect": [ { "axis": "bridge", "monitor": "speed", "trips": true, "between": ["2 s", "3 s"] } ],
        }
        """;

    private static string[] Errors(string text)
    {
        try
        {
            PlanReader.Parse(text, "p");
            return [];
        }
        catch (InputException e)
        {
            return [.. e.Problems.Select(problem => problem.ToString())];
        }
    }

    [Fact]
    public void The_sound_plan_is_read() => InCulture.Each(() => Assert.Empty(Errors(Sound)));

    [Theory]
    // JSON
    [InlineData("\"plan\": 1,", "\"plan\": 1", "p(3,3): this is not JSON: '\"' is invalid after a value. Expected either ',', '}', or ']'; comments and trailing commas are allowed, all else is as in JSON")]
    [InlineData("\"plan\": 1,", "\"plan\": 1, \"plan\": 1,", "p(2,14): 'plan' appears twice; keep one")]
    [InlineData("\"plan\": 1,", "\"plan\": 2,", "p(2,11): plan: version 2 is not known; write 1")]
    [InlineData("\"cycle\"", "\"cycel\"", "p(3,3): unknown key 'cycel'; did you mean 'cycle'?", "p(3,29): phase: '1 ms' needs a cycle of its own; give a cycle such as 4 ms, or no phase")]
    [InlineData("\"axes\"", "\"axis\"", "p(1,1): axes: there is no axis; give at least one", "p(7,23): saw: unknown axis 'bridge'; there is no axis", "p(7,33): saw: unknown axis 'table'; there is no axis", "p(8,3): unknown key 'axis'; did you mean 'axes'?", "p(30,25): axis: unknown axis 'bridge'; there is no axis")]
    [InlineData("\"speed\", \"function\"", "null, \"function\"", "p(18,19): 'name' is missing; add \"name\": \"…\"", "p(30,46): monitor: axis 'bridge' has no monitor 'speed'; monitors are: cam, slow, STO, SS1, torque two channels")]
    [InlineData("\"function\": \"SLS\"", "\"function\": \"SLX\"", "p(18,40): function: unknown function 'SLX'; did you mean 'SLA'?")]
    [InlineData("\"function\": \"SLS\", ", "", "p(18,9): 'function' is missing; write one of SAR, SCA, SDI, SLA, SLI, SLP, SLS, SLT, SMT, SOS, SSM, SSR, STR")]
    [InlineData("\"reaction\": \"stop 1\"", "\"reaction\": \"stop1\"", "p(18,102): reaction: unknown word 'stop1'; did you mean 'stop 1'?")]
    [InlineData("\"gear\": \"5:1\"", "\"gear\": \"5\"", "p(10,56): gear: '5' is no gear ratio; write motor turns to output turns, such as 5:1")]
    [InlineData("\"gear\": \"5:1\"", "\"gear\": 5", "p(10,56): gear: expected a ratio as text, found the number 5; write motor turns to output turns, such as \"5:1\"")]
    [InlineData("\"signals\": {", "\"signals\": { \"x\": 3,", "p(5,21): x: expected an object, found the number 3; write { … }")]
    [InlineData("[\"bridge\", \"table\"]", "\"bridge\"", "p(7,22): saw: expected a list, found the text \"bridge\"; write [ … ]")]
    [InlineData("\"samples\": 9", "\"samples\": 9.5", "p(13,94): samples: 9.5 is no whole number; write one such as 9")]
    // Quantities
    [InlineData("\"33 mm/s\"", "33", "p(18,79): limit: 33 has no unit; would do: \"33 mm/s\", \"33 m/s\", \"33 m/min\"")]
    [InlineData("\"33 mm/s\"", "\"33\"", "p(18,79): limit: '33' has no unit; would do: \"33 mm/s\", \"33 m/s\", \"33 m/min\"")]
    [InlineData("\"33 mm/s\"", "\"33 rpm\"", "p(18,79): limit: unit 'rpm' is no linear speed; would do: mm/s, m/s, m/min")]
    [InlineData("\"33 mm/s\"", "\"33 mm/sek\"", "p(18,79): limit: unknown unit 'sek' in 'mm/sek'; did you mean 'sec'?")]
    [InlineData("\"33 mm/s\"", "\"fast\"", "p(18,79): limit: 'fast' is no quantity; would do: mm/s, m/s, m/min")]
    [InlineData("\"33 mm/s\"", "\"-33 mm/s\"", "p(18,79): limit: '-33 mm/s' is below 0, but magnitudes are compared; write 0 or more, or set \"signed\": true")]
    [InlineData("\"33 mm/s\"", "[1]", "p(18,79): limit: expected a quantity as text, found a list; write one such as \"1 mm/s\"")]
    [InlineData("\"4 ms\"", "4", "p(3,12): cycle: 4 has no unit; would do: \"4 ms\", \"4 s\", \"4 us\", \"4 min\", or \"trace\"")]
    [InlineData("\"4 ms\"", "\"0 ms\"", "p(3,12): cycle: '0 ms' is not above 0; write more than 0", "p(3,29): phase: '1 ms' is not below the cycle of '0 ms'; write 0 or more, and less than the cycle")]
    [InlineData("\"1 ms\"", "\"4 ms\"", "p(3,29): phase: '4 ms' is not below the cycle of '4 ms'; write 0 or more, and less than the cycle")]
    [InlineData("\"1 ms\"", "\"-1 ms\"", "p(3,29): phase: '-1 ms' is below 0; write 0 or more")]
    [InlineData("\"1.5 m/s²\"", "\"0 m/s²\"", "p(16,70): deceleration: '0 m/s²' is not above 0; write more than 0")]
    [InlineData("\"5 N\"", "\"5 N·m\"", "p(14,90): tolerance: unit 'N·m' is no force; would do: N, kN")]
    // Channels
    [InlineData("\"unit\": \"rev\"", "\"unit\": \"mm\"", "p(12,46): unit: unit 'mm' is no rotary position; would do: deg, rad, rev; the motor turns: what moves like the axis is of the load side")]
    [InlineData("\"feed\": \"20 mm/rev\", ", "", "p(9,15): position: recorded at the motor of a linear axis, it needs the axis's feed; add a feed, such as 20 mm/rev")]
    [InlineData("\"from\": \"position\"", "\"from\": \"torque\"", "p(13,31): from: velocity cannot be derived from 'torque'; write \"position\"")]
    [InlineData("\"degree\": 2", "\"degree\": 9", "p(13,107): degree: 9 needs more than 9 samples; write a degree below the number of samples")]
    [InlineData("\"savitzkyGolay\"", "\"movingAverage\"", "p(13,107): degree: movingAverage takes no degree; it takes: samples")]
    [InlineData("\"samples\": 9, \"degree\": 2", "\"alpha\": 1.5, \"beta\": 0.1", "p(13,56): estimator: savitzkyGolay needs samples; add samples", "p(13,56): estimator: savitzkyGolay needs degree; add degree", "p(13,92): alpha: savitzkyGolay takes no alpha; it takes: samples, degree", "p(13,92): alpha: 1.5 lets the filter diverge; write a number above 0 and below 1", "p(13,105): beta: savitzkyGolay takes no beta; it takes: samples, degree")]
    [InlineData("\"column\": \"C\", ", "", "p(25,33): position: no column, and it cannot be derived; give a column")]
    [InlineData("\"position\": { \"column\": \"C\", \"unit\": \"deg\" }", "", "p(27,21): parked: SLP needs the axis's position, which is neither recorded nor derivable; add axes.table.channels.position")]
    // Monitors
    [InlineData("\"limit\": \"33 mm/s\", ", "", "p(18,9): speed: neither limit nor levels is set; set limit or levels")]
    [InlineData("\"limit\": \"33 mm/s\", ", "\"limit\": \"33 mm/s\", \"levels\": [], ", "p(18,100): levels: there is no level; give at least one, or a limit", "p(18,100): speed: limit and levels exclude one another; keep limit or levels")]
    [InlineData("\"name\": \"cam\"", "\"name\": \"speed\"", "p(19,19): name: the axis has a monitor 'speed' already; give each monitor a name of its own")]
    [InlineData("\"name\": \"cam\"", "\"name\": \"SOS\"", "p(19,19): name: 'SOS' is reserved; the names of stops, state, always, never and '… two channels' are taken; give another")]
    [InlineData("\"name\": \"cam\"", "\"name\": \"torque two channels\"", "p(19,19): name: 'torque two channels' is reserved; the names of stops, state, always, never and '… two channels' are taken; give another")]
    [InlineData("\"hysteresis\": \"1 mm\"", "\"hysteresis\": \"6 mm\"", "p(19,90): hysteresis: '6 mm' on every side leaves no way on within every range; write at most half of the range")]
    [InlineData("\"5 mm/s\"", "\"5 mm/s\", \"hysteresis\": \"6 mm/s\"", "p(20,79): hysteresis: '6 mm/s' on every side leaves no way on within 0 to '5 mm/s'; write at most half of the range")]
    [InlineData("\"5 mm/s\"", "\"5 mm/s\", \"lower\": \"6 mm/s\"", "p(20,74): lower: '6 mm/s' lies above the upper '5 mm/s'; write a lower at or below the upper")]
    [InlineData("\"5 mm/s\"", "\"5 mm/s\", \"reaction\": \"stop 0\"", "p(20,77): reaction: SSM has an output and never trips; leave it out")]
    [InlineData("[[\"0 mm\", \"10 mm\"]]", "[[\"0 mm\"]]", "p(19,56): ranges: a pair of from and to has 1 values; write two: from and to")]
    [InlineData(", \"modulo\": \"360 deg\"", "", "p(27,69): lower: '350 deg' lies above the upper '10 deg'; write a lower at or below the upper")]
    [InlineData("\"lower\": \"350 deg\", ", "", "p(27,21): parked: on a modulo axis a window has two ends; add lower")]
    [InlineData("\"motion\": \"linear\", \"feed\": \"20 mm/rev\"", "\"motion\": \"linear\", \"modulo\": \"1 m\", \"feed\": \"20 mm/rev\"", "p(10,37): modulo: a linear position does not begin again; leave it out, or make the axis rotary")]
    // Names
    [InlineData("\"request\": \"gateOpen\"", "\"request\": \"gateOpn\"", "p(18,58): request: unknown signal 'gateOpn'; did you mean 'gateOpen'?")]
    [InlineData("\"request\": \"gateOpen\"", "\"request\": \"cam\"", "p(18,58): request: unknown signal 'cam'; a monitor is written bridge.cam")]
    [InlineData("\"request\": \"gateOpen\"", "\"request\": \"table.park\"", "p(18,58): request: axis 'table' has no monitor 'park'; did you mean 'parked'?")]
    [InlineData("\"request\": \"gateOpen\"", "\"request\": \"tabel.state == Running\"", "p(18,58): request: unknown axis 'tabel'; did you mean 'table'?")]
    [InlineData("\"request\": \"gateOpen\"", "\"request\": \"gateOpen and\"", "p(18,58): request: the expression ends too early (character 13 of the expression); write a signal, axis.monitor, axis.state == TorqueOff, always, never or '('")]
    [InlineData("{ \"signal\": \"gateOpen\" }", "{ \"signal\": \"reset\" }", "p(6,30): signal: unknown signal 'reset'; signals are: gateOpen, hold on")]
    [InlineData("[\"bridge\", \"table\"]", "[\"bridge\", \"bridge\"]", "p(7,33): saw: axis 'bridge' appears twice; name each axis once")]
    [InlineData("{ \"windows\": [[\"1.2 s\", \"4 s\"]] }", "{ \"windows\": [[\"4 s\", \"1.2 s\"]] }", "p(5,75): windows: '4 s' lies above '1.2 s'; write from and until in rising order")]
    [InlineData("\"windows\": [[\"1.2 s\", \"4 s\"]]", "", "p(5,61): hold on: neither column nor windows is set; set column or windows")]
    [InlineData("\"monitor\": \"speed\"", "\"monitor\": \"sped\"", "p(30,46): monitor: axis 'bridge' has no monitor 'sped'; did you mean 'speed'?")]
    [InlineData("\"trips\": true, ", "", "p(30,15): expect: the line expects nothing; write trips, tripsWith or state", "p(30,66): between: it belongs to trips; add trips, or leave it out")]
    // Stops
    [InlineData("\"stops\": { \"STO\": {}, \"SS1\": { \"variant\": \"t\"", "\"stops\": { \"SS1\": { \"variant\": \"t\"", "p(26,16): table: STO is not defined; add \"STO\": {} to its stops")]
    [InlineData(", \"SS1\": { \"variant\": \"t\", \"time\": \"100 ms\" }", "", "p(26,16): table: SS1 is not defined, but monitor 'parked' can demand it; add SS1 to the stops of 'table'")]
    [InlineData("\"reaction\": \"stop 1\"", "\"reaction\": \"stop 2\"", "p(16,16): bridge: SS2 is not defined, but monitor 'speed' can demand it; add SS2 to the stops of 'bridge'", "p(26,16): table: SS2 is not defined, but monitor 'speed' of axis 'bridge' in its group can demand it; add SS2 to the stops of 'table'")]
    [InlineData("\"SS1\": { \"variant\": \"t\"", "\"SOS\": { \"request\": \"gateOpen\", \"window\": \"1 deg\" }, \"SS1\": { \"variant\": \"t\"", "p(16,16): bridge: SOS is not defined, but a request of axis 'table' in its group can demand it; add SOS to the stops of 'bridge'")]
    [InlineData("\"SS1\": { \"variant\": \"t\"", "\"SS2\": { \"variant\": \"t\", \"time\": \"1 s\" }, \"SS1\": { \"variant\": \"t\"", "p(26,16): table: SS2 ends in SOS, which is not defined; add SOS with a window to its stops")]
    [InlineData(", \"time\": \"100 ms\"", ", \"settle\": \"100 ms\"", "p(26,36): SS1: variant t needs time; add \"time\"", "p(26,64): settle: SS1 of variant t takes none; variant t takes: time")]
    [InlineData("\"STO\": {}, \"SS1\": { \"variant\": \"t\"", "\"STO\": { \"residual\": \"1 N·m\", \"grace\": \"1 ms\" }, \"SS1\": { \"variant\": \"t\"", "p(26,39): residual: STO needs the axis's torque, which is neither recorded nor derivable; add axes.table.channels.torque")]
    [InlineData("\"variant\": \"t\"", "\"variant\": \"x\"", "p(26,49): variant: unknown word 'x'; write one of \"t\", \"r\", \"d\"")]
    // How the recording is read
    [InlineData("\"decimal\": \",\"", "\"decimal\": \";\"", "p(4,87): decimal: ';' is no decimal mark; write . or ,", "p(4,87): decimal: ';' is the delimiter too; write two different characters")]
    [InlineData("\"unit\": \"ms\" }", "\"unit\": \"min\" }", "p(4,50): unit: 'min' is no unit of recorded times; would do: s, ms, us, µs, ns; none for date-times of ISO 8601")]
    [InlineData("\"delimiter\"", "\"rate\": \"1 kHz\", \"delimiter\"", "p(4,66): rate: the times are given by a column already; keep either time or rate")]
    public void A_spoilt_plan_says_where_and_what_would_be_right(string sound, string spoilt, params string[] errors) => InCulture.Each(() =>
    {
        Assert.Contains(sound, Sound, StringComparison.Ordinal);
        var at = Sound.IndexOf(sound, StringComparison.Ordinal);
        Assert.Equal(errors, Errors(Sound.Remove(at, sound.Length).Insert(at, spoilt)));
    });

    [Fact]
    public void All_errors_come_in_one_go() => Assert.Equal(3, Errors(Sound
        .Replace("\"33 mm/s\"", "33", StringComparison.Ordinal)
        .Replace("\"plan\": 1", "\"plan\": 7", StringComparison.Ordinal)
        .Replace("[\"bridge\", \"table\"]", "[\"bridge\", \"tabel\"]", StringComparison.Ordinal)).Length);

    [Theory]
    [InlineData("[]", "p(1,1): a plan is an object, this is a list; write { \"plan\": 1, … }")]
    [InlineData("", "p(1,1): this is not JSON: The input does not contain any JSON tokens. Expected the input to start with a valid JSON token, when isFinalBlock is true; comments and trailing commas are allowed, all else is as in JSON")]
    [InlineData("{ \"title\": \"\\ud800\" }", "p(1,12): this text holds characters that are none; write whole Unicode characters")]
    public void What_is_no_plan_at_all(string text, string error) => Assert.Equal([error], Errors(text));

    [Fact]
    public void Columns_count_characters_not_bytes() =>
        Assert.StartsWith("p(1,18): ", Errors("{ \"title\": \"µ²\", \"x\": 1, \"axes\": { \"a\": { \"stops\": { \"STO\": {} } } } }")[0], StringComparison.Ordinal);

    [Fact]
    public void A_file_that_is_not_there_or_no_text()
    {
        Assert.Equal("nowhere.json: there is no such file; name a plan file", Assert.Throws<InputException>(() => PlanReader.Read("nowhere.json")).Message);
        Assert.Equal("p: the file is not UTF-8 text; save the plan as UTF-8", Assert.Throws<InputException>(() => PlanReader.Parse([0x7B, 0xFF], "p")).Message);
    }

    [Fact]
    public void The_hash_is_that_of_the_bytes_with_or_without_a_byte_order_mark()
    {
        byte[] plain = System.Text.Encoding.UTF8.GetBytes(Sound);
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(plain)), PlanReader.Parse(plain, "p").Sha256);
        Assert.NotEqual(PlanReader.Parse(plain, "p").Sha256, PlanReader.Parse([0xEF, 0xBB, 0xBF, .. plain], "p").Sha256);
    }

    [Fact]
    public void Every_function_is_in_the_list()
    {
        var functions = typeof(Plan).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(MonitorSim.Monitors.MonitorPlan)) && type.IsPublic).ToList();
        Assert.Equal(functions.OrderBy(type => type.Name, StringComparer.Ordinal), MonitorTypes.All);
        Assert.Equal(MonitorTypes.All.Select(type => type.Name.ToUpperInvariant()), MonitorTypes.Functions);
    }
}
