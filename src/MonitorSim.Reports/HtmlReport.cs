using System.Text;
using System.Text.Encodings.Web;
using System.Text.Unicode;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using MonitorSim.Reports.Components;

namespace MonitorSim.Reports;

/// <summary>A report as one HTML file that opens from disk, needs no network and prints on A4. The same report gives the same bytes.</summary>
public static class HtmlReport
{
    /// <summary>The report of a replay as text; it carries a replay that one can drive.</summary>
    /// <param name="report">What to tell.</param>
    /// <exception cref="ArgumentException">The report has no replay.</exception>
    public static string Text(ReplayReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.Replays.Count == 0) throw new ArgumentException("a report needs at least one replay", nameof(report));
        return Render<ReplayPage>(nameof(ReplayPage.Report), report);
    }

    /// <summary>The report of a tuning as text.</summary>
    /// <param name="report">What to tell.</param>
    public static string Text(TuneReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        return Render<TunePage>(nameof(TunePage.Report), report);
    }

    /// <summary>Writes the report of a replay, UTF-8 without a byte order mark.</summary>
    /// <param name="report">What to tell.</param>
    /// <param name="stream">Where it goes; left open.</param>
    /// <exception cref="ArgumentException">The report has no replay.</exception>
    public static void Write(ReplayReport report, Stream stream) => Write(Text(report), stream);

    /// <summary>Writes the report of a tuning, UTF-8 without a byte order mark.</summary>
    /// <param name="report">What to tell.</param>
    /// <param name="stream">Where it goes; left open.</param>
    public static void Write(TuneReport report, Stream stream) => Write(Text(report), stream);

    private static void Write(string text, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(stream);
        stream.Write(Encoding.UTF8.GetBytes(text));
    }

    private static string Render<TPage>(string parameter, object report) where TPage : IComponent => RenderAsync<TPage>(parameter, report).GetAwaiter().GetResult();

    private static async Task<string> RenderAsync<TPage>(string parameter, object report) where TPage : IComponent
    {
        // Letters of all languages as themselves; what HTML takes for its own is escaped all the same.
        await using var services = new ServiceCollection().AddSingleton(HtmlEncoder.Create(UnicodeRanges.All)).BuildServiceProvider();
        await using var renderer = new HtmlRenderer(services, NullLoggerFactory.Instance);
        return await renderer.Dispatcher.InvokeAsync(async () =>
        {
            var page = await renderer.RenderComponentAsync<TPage>(ParameterView.FromDictionary(new Dictionary<string, object?> { [parameter] = report }));
            return page.ToHtmlString().ReplaceLineEndings("\n");
        });
    }
}
