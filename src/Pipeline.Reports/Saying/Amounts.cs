using System.Globalization;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>Amounts, counts and pieces as a painter reads them.</summary>
internal static class Amounts
{
    /// <summary><c>3.0 mL</c>; less than a twentieth is <c>a drop</c>.</summary>
    public static string Volume(double millilitres) => millilitres switch
    {
        < 0.05 => "a drop",
        >= 100 => millilitres.ToString("0", CultureInfo.InvariantCulture) + " mL",
        _ => millilitres.ToString("0.0", CultureInfo.InvariantCulture) + " mL",
    };

    /// <summary>Nobody counts more drops than this; larger amounts are measured.</summary>
    private const int MostDrops = 40;

    /// <summary><c>12 drops</c>; nothing where they are too many to count, the measure standing beside it.</summary>
    public static string Drops(int drops) => drops is > 0 and <= MostDrops ? Counted(drops, "drop") : "";

    /// <summary><c>4 parts</c>, <c>1 part</c>, <c>1.5 parts</c>; nobody measures finer than tenths of a part, and less than half a tenth is <c>a trace</c>.</summary>
    public static string Parts(double parts) => parts.ToString("0.#", CultureInfo.InvariantCulture) switch
    {
        "0" => "a trace",
        "1" => "1 part",
        var number => $"{number} parts",
    };

    /// <summary><c>1 cup</c>, <c>2 cups</c>.</summary>
    public static string Counted(long count, string thing, string? many = null) =>
        FormattableString.Invariant($"{count} {(count == 1 ? thing : many ?? thing + "s")}");

    /// <summary>Which units of a model: <c>Line diver, all 3</c>; <c>Line diver, 1-2 of 3</c>; the name alone for a single piece.</summary>
    public static string Units(PlannedTask task)
    {
        var model = Visible.Line(task.Model);
        if (task.OfUnits <= 1)
            return model;
        if (task.Units == task.OfUnits)
            return FormattableString.Invariant($"{model}, all {task.OfUnits}");
        var last = task.FirstUnit + task.Units - 1;
        return task.Units == 1
            ? FormattableString.Invariant($"{model}, no. {task.FirstUnit} of {task.OfUnits}")
            : FormattableString.Invariant($"{model}, no. {task.FirstUnit}-{last} of {task.OfUnits}");
    }

    /// <summary>A model with its count: <c>Line diver x3</c>.</summary>
    public static string Model(string model, int units) =>
        units <= 1 ? Visible.Line(model) : FormattableString.Invariant($"{Visible.Line(model)} x{units}");

    /// <summary>A name in kebab case as words: <c>solvent vapour</c>.</summary>
    public static string Words(string kebab) => Visible.Line(kebab).Replace('-', ' ');

    /// <summary>With a capital at its beginning.</summary>
    public static string Capital(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];

    /// <summary>Without a capital at its beginning.</summary>
    public static string Uncapital(string words) => words.Length == 0 ? words : char.ToLowerInvariant(words[0]) + words[1..];

    /// <summary>With a full stop at its end, unless it has one.</summary>
    public static string Stopped(string words) => words.Length == 0 || words[^1] is '.' or '!' or '?' ? words : words + ".";
}
