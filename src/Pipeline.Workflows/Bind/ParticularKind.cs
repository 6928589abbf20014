using System.Globalization;
using System.Reflection;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>A type that a verb's own key can have: what to write, how the schema checks it, how it is read.</summary>
internal sealed class ParticularKind
{
    private const int MostWhole = 1_000_000;

    private static readonly ParticularKind[] Kinds =
    [
        Of<string>("text", "a text", null, (names, node) => names.Text(node)),
        Plain("whole number", "a whole number", Patterns.Whole, text => NumberText.Whole(text, 0, MostWhole)),
        Plain("number", "a number such as 2.5", Patterns.Number, text => NumberText.Number(text, MostWhole)),
        Plain("yes or no", WordText.YesOrNoExpected, Patterns.YesOrNo, WordText.YesOrNo),
        Plain("time", DurationText.Expected, Patterns.Duration, DurationText.Attended),
        Plain("time", DurationText.Expected, Patterns.Duration, DurationText.Drying),
        Plain("time or range", DurationText.RangeExpected, Patterns.DurationRange, DurationText.Range),
        Plain("size", AmountText.SizeExpected, Patterns.Size, AmountText.SizeOrClass),
        Plain("volume", AmountText.VolumeExpected, Patterns.Volume, AmountText.Volume),
        Plain("share", AmountText.ShareExpected, Patterns.Share, AmountText.Share),
        Plain("temperature", AmountText.TemperatureExpected, Patterns.Temperature, AmountText.Temperature),
        Of<Paint>("paint or mix", "the name of a paint or mix", null, (names, node) => names.Paint(node)),
        Of<MaskMaterial>("mask material", "what to mask with", null, (names, node) => names.MaskMaterial(node)),
        Of<AreaNames>("areas", "areas, parts or all", null, (names, node) => names.Areas(node)),
        Of<MaskName>("mask", "the name of a mask", null, (names, node) => names.Mask(node)),
    ];

    private ParticularKind(Type type, string called, string expected, string? pattern, Func<StepNames, SyntaxNode, object?> read) =>
        (Type, Called, Expected, Pattern, Read) = (type, called, expected, pattern, read);

    public Type Type { get; }

    /// <summary>For the reference: <c>time</c>.</summary>
    public string Called { get; }

    /// <summary>What to write, with an article.</summary>
    public string Expected { get; }

    /// <summary>A regular expression (ECMA 262) that its texts match; null for free text, names and choices.</summary>
    public string? Pattern { get; }

    /// <summary>The words, if it is a choice.</summary>
    public Choice? Choice { get; private init; }

    /// <summary>The value a node says; null and a finding if it says none.</summary>
    public Func<StepNames, SyntaxNode, object?> Read { get; }

    /// <summary>The kind of a type; null if the contract has no such particular.</summary>
    public static ParticularKind? OfType(Type type)
    {
        foreach (var kind in Kinds)
        {
            if (kind.Type == type)
                return kind;
        }

        if (!type.IsEnum)
            return null;
        var choice = new Choice(type);
        return new ParticularKind(type, "choice", choice.Expected, null, (names, node) => names.Desk.Says(node, choice.Read, choice.Expected, out var value) ? value : null)
        {
            Choice = choice,
        };
    }

    /// <summary>Makes a sequence of values of this kind.</summary>
    public object ToSequence(List<object> values) => Gather.MakeGenericMethod(Type).Invoke(null, [values])!;

    private static readonly MethodInfo Gather = typeof(ParticularKind).GetMethod(nameof(Gathered), BindingFlags.NonPublic | BindingFlags.Static)!;

    private static object Gathered<T>(List<object> values) => values.Cast<T>().ToSequence();

    private static ParticularKind Of<T>(string called, string expected, string? pattern, Func<StepNames, SyntaxNode, object?> read) =>
        new(typeof(T), called, expected, pattern, read);

    private static ParticularKind Plain<T>(string called, string expected, string pattern, Func<string, Written<T>> read)
        where T : struct =>
        new(typeof(T), called, expected, pattern, (names, node) => names.Desk.Says(node, read, expected, out var value) ? value : null);

    /// <summary>A default value as the file would say it.</summary>
    public static string Shown(object? value) => value switch
    {
        null => "",
        bool flag => flag ? "yes" : "no",
        Enum word => word is DryingState ? WordText.Kebab(word.ToString()) : WordText.Spaced(word.ToString()),
        IFormattable number => number.ToString(null, CultureInfo.InvariantCulture),
        _ => value.ToString() ?? "",
    };
}
