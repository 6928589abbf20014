using Pipeline.Abstractions;

namespace Pipeline.Plugins;

/// <summary>What rules ask about metal, clear colour and shine.</summary>
internal static class Shine
{
    /// <summary>Metal or glowing clear colour that still shows and still shines: nothing opaque and nothing matt over it. Null if there is none.</summary>
    public static Layer? ShiningMetal(this Surface surface)
    {
        for (var i = surface.Layers.Count - 1; i >= 0; i--)
        {
            var layer = surface.Layers[i];
            if (layer.Role is LayerRole.Effect or LayerRole.Decal || layer.Technique is Technique.Sponge or Technique.DryBrush)
                continue;
            if (layer.IsMetallic || (layer.Technique == Technique.ClearColour && layer.Sheen >= Sheen.Gloss))
                return layer.Sheen == Sheen.Matt ? null : layer;
            // clear colour and varnish let it through
            if ((layer.Role != LayerRole.Varnish && !layer.IsClear) || layer.Sheen == Sheen.Matt)
                return null;
        }

        return null;
    }

    /// <summary>The layer whose colour shows: the highest that is neither clear nor a thin effect. Null on a bare surface.</summary>
    public static Layer? ShownColour(this Surface surface)
    {
        for (var i = surface.Layers.Count - 1; i >= 0; i--)
        {
            var layer = surface.Layers[i];
            if (!layer.IsClear && layer.Role is not (LayerRole.Varnish or LayerRole.Effect) && layer.Technique is not (Technique.ClearColour or Technique.Glaze))
                return layer;
        }

        return null;
    }

    /// <summary>Colour that keeps others off: no clear colour, glaze, dab or dusting.</summary>
    public static bool Covers(this Layer layer) =>
        layer.Role is LayerRole.Colour or LayerRole.Undercoat or LayerRole.Texture
        && !layer.IsClear
        && layer.Technique is Technique.Plain or Technique.PreShade or Technique.Stain;

    /// <summary>
    /// CIE lightness L* of an sRGB colour, 0 to 100 (IEC 61966-2-1 and ISO/CIE 11664-4); null if the file gives no colour.
    /// </summary>
    public static double? Lightness(this Paint? paint)
    {
        if (paint?.Colour is not { Length: 7 } colour || colour[0] != '#')
            return null;
        if (!int.TryParse(colour.AsSpan(1), System.Globalization.NumberStyles.HexNumber, System.Globalization.CultureInfo.InvariantCulture, out var rgb))
            return null;
        var luminance = (0.2126 * Linear(rgb >> 16)) + (0.7152 * Linear((rgb >> 8) & 0xff)) + (0.0722 * Linear(rgb & 0xff));
        return luminance > 216.0 / 24389 ? (116 * Math.Cbrt(luminance)) - 16 : luminance * 24389 / 27;
    }

    private static double Linear(int eighth)
    {
        var value = eighth / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }

    /// <summary>Dark enough to show dust, frost and specks: L* below 35 (common practice). False if the colour is not known.</summary>
    public static bool IsDark(this Paint? paint) => paint.Lightness() < 35;

    /// <summary>Pale enough to show what the tool had in it before: L* above 75 (common practice). False if the colour is not known.</summary>
    public static bool IsPale(this Paint? paint) => paint.Lightness() > 75;

    /// <summary>The size of some areas of one unit together, in cm².</summary>
    public static double SizeOf(this Moment moment, Sequence<string> areas) =>
        moment.Model.Areas.Where(area => areas.Contains(area.Name)).Sum(area => area.Size.SquareCentimetres);

    /// <summary>The area of that name.</summary>
    public static Area? AreaNamed(this Model model, string name)
    {
        foreach (var area in model.Areas)
        {
            if (area.Name == name)
                return area;
        }

        return null;
    }
}
