using System.Runtime.CompilerServices;

namespace Pipeline.Abstractions;

/// <summary>Ranges that quantities keep.</summary>
internal static class Checked
{
    public static double NotNegative(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) && value >= 0 ? value : throw new ArgumentOutOfRangeException(name, value, "Must be zero or more, and finite.");

    public static double Between(double value, double low, double high, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value >= low && value <= high ? value : throw new ArgumentOutOfRangeException(name, value, $"Must be from {low} to {high}.");
}
