using System.Text;
using FsCheck.Xunit;
using MonitorSim.Traces;

namespace MonitorSim.Tests.Traces;

/// <summary>Damaged recordings end in a trace or in problems, never in anything else.</summary>
public class MutationTests
{
    private static readonly string[] Seeds =
    [
        "t,v,w\n0,1.5,on\n0.5,2,off\n1,-3e-2,on\n",
        "# log\nt;v;w\ns;mm;\n0;1,5;on\n0,5;2;off\n1;-3e-2;\"o\"\"n\"\n",
        "Zeit\tv\r\n2024-03-01T00:00:00Z\t1\r\n2024-03-01T00:00:01.5+01:00\t2\r\n",
        "sep=;\r\n\"a;b\";time [ms]\r\n1;0\r\n12345678901234567890;1.0000000001\r\n",
        "\uFEFFt|x\n0|1\n1|nan\n2|\n",
    ];

    private static readonly string[] Pieces = ["\"", ",", ";", "\n", "\r", "\t", "|", "-", "e", ".", "#", "\0", "9999999999999999999", "1e308", "nan", "µ", " ", "\"\"", "2024-", "T", "\uFEFF"];

    [Property(MaxTest = 3000)]
    public void Nothing_but_a_trace_or_problems(int seed)
    {
        var random = new Random(seed);
        var text = new StringBuilder(Seeds[random.Next(Seeds.Length)]);
        for (var k = random.Next(1, 6); k > 0; k--)
        {
            var at = random.Next(text.Length);
            switch (random.Next(4))
            {
                case 0: text.Insert(at, Pieces[random.Next(Pieces.Length)]); break;
                case 1: text.Remove(at, Math.Min(random.Next(1, 8), text.Length - at)); break;
                case 2: text[at] = (char)random.Next(32, 127); break;
                default: text.Insert(at, text.ToString(0, at)); break;
            }

            if (text.Length == 0) text.Append('x');
        }

        var bytes = Encoding.UTF8.GetBytes(text.ToString());
        if (random.Next(4) == 0) bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        var dialect = random.Next(3) == 0 ? new Dialect { Rate = new(1000), SkipRows = random.Next(3), UnitsRow = random.Next(2) == 0 } : null;
        try
        {
            var trace = TraceReader.Read(new MemoryStream(bytes), "run.csv", dialect, null, out var found);
            var survey = TraceSurvey.Of(trace, found);
            Assert.Equal(trace.Columns.Count, survey.Columns.Count);
        }
        catch (InputException e)
        {
            Assert.NotEmpty(e.Problems);
            Assert.All(e.Problems, p => Assert.StartsWith("run.csv", p.Place, StringComparison.Ordinal));
        }
    }
}
