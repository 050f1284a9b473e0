using Microsoft.Playwright;

namespace Foreshore.Guide.Shell;

internal static class Pixels
{
    /// <summary>The browser itself reads its picture back: no image library is needed.</summary>
    public static async Task<(int Green, int Blue)> BrightestGreenAndBlueAsync(IPage page)
    {
        var picture = Convert.ToBase64String(await page.ScreenshotAsync(new() { FullPage = true }));
        var brightest = await page.EvaluateAsync<int[]>("""
            async picture => {
              const bytes = Uint8Array.from(atob(picture), letter => letter.charCodeAt(0));
              const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
              const canvas = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
              canvas.drawImage(bitmap, 0, 0);
              const pixels = canvas.getImageData(0, 0, bitmap.width, bitmap.height).data;
              let green = 0, blue = 0;
              for (let i = 0; i < pixels.length; i += 4) { green = Math.max(green, pixels[i + 1]); blue = Math.max(blue, pixels[i + 2]); }
              return [green, blue];
            }
            """, picture);
        return (brightest[0], brightest[1]);
    }
}
