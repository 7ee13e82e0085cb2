using Microsoft.Playwright;

namespace MonitorSim.BrowserTests;

/// <summary>A page that is open, with everything it complained about and asked for.</summary>
internal sealed class OpenPage : IAsyncDisposable
{
    private OpenPage(IPage page)
    {
        Page = page;
        page.Console += (_, message) => Complaints.Add($"{message.Type}: {message.Text}");
        page.PageError += (_, error) => Complaints.Add(error);
        page.Dialog += (_, dialog) =>
        {
            Complaints.Add($"dialog: {dialog.Message}");
            _ = dialog.DismissAsync();
        };
        page.Request += (_, request) => Requests.Add(request.Url);
    }

    public IPage Page { get; }

    /// <summary>What the console, the script or a dialog said; a good page is silent.</summary>
    public List<string> Complaints { get; } = [];

    /// <summary>Addresses that were asked for.</summary>
    public List<string> Requests { get; } = [];

    public static async Task<OpenPage> From(IPage page, Uri address)
    {
        var open = new OpenPage(page);
        await page.GotoAsync(address.AbsoluteUri);
        return open;
    }

    public async ValueTask DisposeAsync() => await Page.Context.DisposeAsync();
}
