using System.Runtime.CompilerServices;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace MonitorSim.Tests.Gallery;

/// <summary>The gallery shows what its examples draw, and their code. To accept a change, run the tests with MONITORSIM_APPROVE=1, look at each picture and commit docs/gallery.</summary>
public sealed partial class GalleryTests : IDisposable
{
    private static readonly IReadOnlyList<IExample> Examples =
        [new SpeedWithTheGateOpen(), new SpeedLevels(), new TwoEncoders(), new RampOfAStop(), new SimulatedStop(), new FilterAgainstLimit(), new RunawayOfALift()];

    private readonly string _folder = Directory.CreateTempSubdirectory("monitorsim").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void EveryExampleIsShown() => Assert.Equal(
        typeof(IExample).Assembly.GetTypes().Where(type => type.IsAssignableTo(typeof(IExample)) && type.IsClass).Select(type => type.Name).Order(), Examples.Select(example => example.GetType().Name).Order());

    /// <summary>Titles, words of the pictures and code are those of the examples; every picture is there and of the size that is drawn. Pixels differ with the fonts of a machine.</summary>
    [Fact]
    public void TheGalleryIsInStep()
    {
        var isApproved = Environment.GetEnvironmentVariable("MONITORSIM_APPROVE") == "1";
        var page = new StringBuilder("# Gallery\n\nEach picture with the program that draws it. The recordings are those of the demo; the tests run every program.\n");
        foreach (var example in Examples)
        {
            var name = example.GetType().Name;
            var drawn = Path.Combine(_folder, name);
            example.Draw(drawn);
            var (from, to) = (Path.Combine(drawn, example.Picture + ".png"), Path.Combine(Gallery(), name + ".png"));
            if (isApproved) File.Copy(from, to, overwrite: true);
            Assert.Equal(Size(from), Size(to));
            page.Append($"\n## {example.Title}\n\n![{Words(Path.Combine(drawn, example.Picture + ".svg"))}]({name}.png)\n\n```csharp\n{Code(name)}\n```\n");
        }

        var path = Path.Combine(Gallery(), "README.md");
        if (isApproved) File.WriteAllText(path, page.ToString());
        Assert.Equal(page.ToString(), File.ReadAllText(path).ReplaceLineEndings("\n"));
    }

    /// <summary>What stands in a picture, without numbers beside its axes: an alternative text.</summary>
    private static string Words(string svg) => string.Join("; ", XDocument.Load(svg).Descendants().Where(element => element.Name.LocalName == "text").Select(element => element.Value.Trim())
        .Where(words => words.Any(char.IsLetter)).Distinct()).Replace("[", "(", StringComparison.Ordinal).Replace("]", ")", StringComparison.Ordinal);

    /// <summary>The namespaces that an example uses and what its Draw does.</summary>
    private static string Code(string name)
    {
        var source = File.ReadAllText(Path.Combine(Here(), name + ".cs")).ReplaceLineEndings("\n");
        var body = Body().Match(source).Groups[1].Value;
        var usings = source.Split('\n').TakeWhile(line => line.StartsWith("using ", StringComparison.Ordinal)).Prepend("using MonitorSim;");
        return string.Join('\n', usings) + "\n\n" + string.Join('\n', body.TrimEnd().Split('\n').Select(line => line.Length > 8 ? line[8..] : ""));
    }

    /// <summary>Width and height in the head of a PNG.</summary>
    private static string Size(string png) => Convert.ToHexString(File.ReadAllBytes(png)[16..24]);

    private static string Here([CallerFilePath] string file = "") => Path.GetDirectoryName(file)!;

    private static string Gallery() => Path.Combine(Here(), "..", "..", "..", "docs", "gallery");

    [GeneratedRegex(@"void Draw\(string folder\)\n    \{\n(.*?)\n    \}\n", RegexOptions.Singleline)]
    private static partial Regex Body();
}
