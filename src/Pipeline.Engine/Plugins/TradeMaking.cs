using System.Text.RegularExpressions;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Collects what one plugin brings and sees to it that every name can be written in a file and shown on a screen.</summary>
internal sealed partial class TradeMaking(string plugin)
{
    private readonly Dictionary<string, Brought<Verb>> verbs = [];
    private readonly Dictionary<string, Brought<Rule>> rules = [];
    private readonly Dictionary<string, Brought<Family>> families = [];
    private readonly Dictionary<string, Brought<Material>> materials = [];
    private readonly Dictionary<string, Brought<MaskMaterial>> maskMaterials = [];
    private readonly List<Brought<CoatOver>> compatibility = [];
    private readonly List<Brought<Rewets>> rewetting = [];
    private readonly List<Brought<CleanOutTime>> cleanOuts = [];
    private readonly List<Brought<Thinner>> thinners = [];
    private readonly List<Brought<Setting>> settings = [];
    private readonly List<Brought<Figure>> figures = [];

    /// <summary>Adds a verb, a rule or the rows of a catalogue.</summary>
    /// <exception cref="PluginException">A name is missing, taken or cannot be written.</exception>
    public void Add(object item)
    {
        switch (item)
        {
            case Verb verb:
                _ = verb.Summary ?? throw new PluginException($"the verb '{verb.Name}' has no summary");
                AddOne(verbs, "verb", Word(verb, verb.Name), verb);
                break;
            case Rule rule:
                _ = rule.Summary ?? throw new PluginException($"the rule '{rule.Name}' has no summary");
                AddOne(rules, "rule", Word(rule, rule.Name), rule);
                break;
            case Catalogue<Family> rows:
                AddRows(families, "coating family", rows, row => row.Name, row => row.AlsoCalled);
                break;
            case Catalogue<Material> rows:
                AddRows(materials, "material", rows, row => row.Name, row => row.AlsoCalled);
                break;
            case Catalogue<MaskMaterial> rows:
                AddRows(maskMaterials, "mask material", rows, row => row.Name, row => row.AlsoCalled);
                break;
            case Catalogue<CoatOver> rows:
                AddCells(compatibility, rows, row => [row.Coat, row.Over]);
                break;
            case Catalogue<Rewets> rows:
                AddCells(rewetting, rows, row => [row.Coat]);
                break;
            case Catalogue<CleanOutTime> rows:
                AddCells(cleanOuts, rows, _ => []);
                break;
            case Catalogue<Thinner> rows:
                AddCells(thinners, rows, row => [row.Name]);
                break;
            case Catalogue<Setting> rows:
                AddCells(settings, rows, row => [row.Name]);
                break;
            case Catalogue<Figure> rows:
                AddCells(figures, rows, row => [row.Name]);
                break;
            default:
                throw new PluginException($"its class {item.GetType().Name} is a catalogue of something this program has no table for");
        }
    }

    /// <summary>All that was added; what has a name of its own is sorted by it.</summary>
    public Trade Made() => new()
    {
        Verbs = Sorted(verbs),
        Rules = Sorted(rules),
        Families = Sorted(families),
        Materials = Sorted(materials),
        MaskMaterials = Sorted(maskMaterials),
        Compatibility = compatibility.ToSequence(),
        Rewetting = rewetting.ToSequence(),
        CleanOuts = cleanOuts.ToSequence(),
        Thinners = thinners.ToSequence(),
        Settings = settings.ToSequence(),
        Figures = figures.ToSequence(),
    };

    private static Sequence<Brought<T>> Sorted<T>(Dictionary<string, Brought<T>> items) =>
        items.OrderBy(item => item.Key, StringComparer.Ordinal).Select(item => item.Value).ToSequence();

    private static string Word(object item, string? name) =>
        name is not null && KebabCase().IsMatch(name)
            ? name
            : throw new PluginException($"its class {item.GetType().Name} needs a name of lower-case words joined by hyphens");

    private void AddRows<T>(
        Dictionary<string, Brought<T>> to, string what, Catalogue<T> rows, Func<T, string?> nameOf, Func<T, Sequence<string>> alsoCalled)
    {
        foreach (var row in rows.Entries)
        {
            if (row is null)
                throw new PluginException($"a row of its class {rows.GetType().Name} is missing");
            var name = nameOf(row);
            if (name is null || alsoCalled(row).With(name).Any(each => !TradeName().IsMatch(each)))
                throw new PluginException($"a {what} of its class {rows.GetType().Name} needs a name of plain words");
            AddOne(to, what, name, row);
        }
    }

    private void AddCells<T>(List<Brought<T>> to, Catalogue<T> rows, Func<T, Sequence<string?>> namesOf)
    {
        foreach (var row in rows.Entries)
        {
            if (row is null)
                throw new PluginException($"a row of its class {rows.GetType().Name} is missing");
            if (namesOf(row).Any(name => name is null || !TradeName().IsMatch(name)))
                throw new PluginException($"a row of its class {rows.GetType().Name} needs names of plain words");
            to.Add(new Brought<T>(plugin, row));
        }
    }

    private void AddOne<T>(Dictionary<string, Brought<T>> to, string what, string name, T item)
    {
        if (!to.TryAdd(name, new Brought<T>(plugin, item)))
            throw new PluginException($"it has two of the {what} '{name}'");
    }

    [GeneratedRegex("^[a-z][a-z0-9]*(-[a-z0-9]+)*$", RegexOptions.CultureInvariant)]
    private static partial Regex KebabCase();

    [GeneratedRegex(@"^[\p{L}\p{Nd}]+([ '/.-]+[\p{L}\p{Nd}]+)*$", RegexOptions.CultureInvariant)]
    private static partial Regex TradeName();
}

/// <summary>Something about a plugin that keeps it from being used; the message goes on from "the plugin cannot be used:".</summary>
internal sealed class PluginException : Exception
{
    public PluginException(string message)
        : base(message)
    {
    }

    public PluginException(string message, Exception inner)
        : base(message, inner)
    {
    }

    public PluginException()
    {
    }
}
