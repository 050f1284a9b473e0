using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;

namespace Foreshore.Guide.Shell.Ink;

/// <summary>An SVG text. Razor keeps the tag &lt;text&gt; for itself inside loops and conditions; this writes it everywhere.</summary>
public sealed class InkText : ComponentBase
{
    /// <summary>Across, as it stands in the attribute: units or a percentage.</summary>
    [Parameter, EditorRequired] public required string X { get; set; }

    /// <summary>Down to the foot of the letters, units.</summary>
    [Parameter] public double Y { get; set; }

    /// <summary>Down as a percentage, instead of <see cref="Y"/>.</summary>
    [Parameter] public string? Down { get; set; }

    [Parameter, EditorRequired] public required string Words { get; set; }

    [Parameter] public string? Class { get; set; }

    protected override void BuildRenderTree(RenderTreeBuilder builder)
    {
        builder.OpenElement(0, "text");
        builder.AddAttribute(1, "x", X);
        builder.AddAttribute(2, "y", Down ?? InkPath.Number(Y));
        if (Class is not null) builder.AddAttribute(3, "class", Class);
        builder.AddContent(4, Words);
        builder.CloseElement();
    }
}
