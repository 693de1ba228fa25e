using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests.Plan;

/// <summary>One finger on a screen, down to the browser's own reading of it: what scrolls scrolls, and what is held is held.</summary>
internal sealed class Finger(ICDPSession browser)
{
    private const int Steps = 6;

    private (float X, float Y) at;

    public static async Task<Finger> On(IPage page) => new(await page.Context.NewCDPSessionAsync(page));

    public Task Down(float x, float y)
    {
        at = (x, y);
        return Send("touchStart", at);
    }

    /// <summary>Over the screen to there, step by step.</summary>
    public async Task Move(float x, float y)
    {
        (float fromX, float fromY) = at;
        for (int step = 1; step <= Steps; step++)
        {
            at = (fromX + ((x - fromX) * step / Steps), fromY + ((y - fromY) * step / Steps));
            await Send("touchMove", at);
        }
    }

    public Task Up() => Send("touchEnd");

    private Task Send(string what, params (float X, float Y)[] points) => browser.SendAsync("Input.dispatchTouchEvent", new()
    {
        ["type"] = what,
        ["touchPoints"] = points.Select(point => new Dictionary<string, object> { ["x"] = point.X, ["y"] = point.Y }).ToArray(),
    });
}
