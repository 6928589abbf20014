using System.Globalization;
using Pipeline.Abstractions;

namespace Pipeline.Planning;

/// <summary>How light a paint is, to tell a change from light to dark from one the other way.</summary>
internal static class Lightness
{
    // Clear coats show every speck of what was sprayed before: the cleanest cup is theirs.
    private const double OfClear = 101;

    /// <summary>CIE lightness from 0 to 100, 101 for clear coats; null if the file gives no colour.</summary>
    public static double? Of(Paint paint)
    {
        if (paint.IsClear || paint.Family.IsVarnish)
            return OfClear;
        if (paint.Colour is { } colour)
            return OfColour(colour);
        if (paint.Recipe is not { } recipe)
            return null;
        // a mix without a colour of its own: its parts' average is good enough to tell light from dark
        double sum = 0;
        double weight = 0;
        foreach (var part in recipe.Parts)
        {
            if (Of(part.Paint) is { } lightness)
                (sum, weight) = (sum + (part.Parts * lightness), weight + part.Parts);
        }

        return weight > 0 ? sum / weight : null;
    }

    // sRGB (IEC 61966-2-1) to CIE lightness (ISO/CIE 11664-4).
    private static double? OfColour(string colour)
    {
        if (colour.Length != 7 || !int.TryParse(colour.AsSpan(1), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var rgb))
            return null;
        var luminance = (0.2126 * Linear(rgb >> 16)) + (0.7152 * Linear((rgb >> 8) & 255)) + (0.0722 * Linear(rgb & 255));
        return luminance > 216.0 / 24389 ? (116 * Math.Cbrt(luminance)) - 16 : luminance * 24389 / 27;
    }

    private static double Linear(int channel)
    {
        var c = channel / 255.0;
        return c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4);
    }
}
