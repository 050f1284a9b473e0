using Microsoft.Playwright;

namespace Foreshore.Guide.Browser;

/// <summary>
/// Whether a page fits its screen. A click comes back when the next page begins, which may be before its style and its fonts are there:
/// measured then, the width is that of bare HTML in whatever fonts the machine has. So both are waited for.
/// </summary>
internal static class Fit
{
    /// <summary>What reaches past the right edge, so that the page scrolls sideways; empty where it does not.</summary>
    public static async Task<string> PastTheEdgeAsync(this IPage page)
    {
        await page.WaitForLoadStateAsync(LoadState.Load);
        return await page.EvaluateAsync<string>("""
            async () => {
                await document.fonts.ready;
                if (document.documentElement.scrollWidth <= innerWidth) return '';
                const past = [...document.querySelectorAll('body *')].filter(e => e.getBoundingClientRect().right > innerWidth + .5 && !e.closest('.wide'))
                    .map(e => `${e.tagName.toLowerCase()}#${e.id} to ${Math.round(e.getBoundingClientRect().right)}: ${e.textContent.trim().slice(0, 40)}`);
                return `${document.documentElement.scrollWidth} px: ${past.slice(-3).join('; ')}`;
            }
            """);
    }

    /// <summary>Letters as wide as readers may set them (WCAG 2.2, 1.4.12): about as wide as the widest fonts of any machine.</summary>
    public static Task SpreadLettersAsync(this IPage page) => page.EvaluateAsync("""
        () => {
            const sheet = new CSSStyleSheet();
            sheet.replaceSync('* { letter-spacing: .12em !important; word-spacing: .16em !important; line-height: 1.5 !important; }');
            document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
        }
        """);
}
