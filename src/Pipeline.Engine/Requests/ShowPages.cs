using System.Globalization;
using System.Text;
using MediatR;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Asks for the page about one verb, in Markdown.</summary>
public sealed record ShowVerb(string Name) : IRequest<Answer<string>>;

/// <summary>Asks for the JSON Schema of the workflow file with the verbs in use.</summary>
public sealed record PrintSchema : IRequest<Answer<string>>;

internal sealed class ShowVerbHandler(PluginShelf plugins) : IRequestHandler<ShowVerb, Answer<string>>
{
    public Task<Answer<string>> Handle(ShowVerb request, CancellationToken cancellationToken)
    {
        var page = Reference.OfVerb(plugins.Trade, request.Name);
        return Task.FromResult<Answer<string>>(page.Length > 0
            ? new Answer<string>.Given(page)
            : Unknown.Name<string>("verb", request.Name, plugins.Trade.Verbs.Select(verb => verb.Item.Name), "pipeline verbs lists them all."));
    }
}

internal sealed class PrintSchemaHandler(PluginShelf plugins) : IRequestHandler<PrintSchema, Answer<string>>
{
    public Task<Answer<string>> Handle(PrintSchema request, CancellationToken cancellationToken) =>
        Task.FromResult<Answer<string>>(new Answer<string>.Given(Schema.Generate(Stages.Nameable(plugins.Trade))));
}

/// <summary>Asks for the page about one rule, in Markdown.</summary>
public sealed record ShowRule(string Name) : IRequest<Answer<string>>;

internal sealed class ShowRuleHandler(PluginShelf plugins) : IRequestHandler<ShowRule, Answer<string>>
{
    public Task<Answer<string>> Handle(ShowRule request, CancellationToken cancellationToken)
    {
        var rules = Stages.Nameable(plugins.Trade).Rules.Select(rule => rule.Item).ToList();
        return Task.FromResult<Answer<string>>(rules.FirstOrDefault(rule => rule.Name == request.Name) is { } found
            ? new Answer<string>.Given(Page(found))
            : Unknown.Name<string>("rule", request.Name, rules.Select(rule => rule.Name), "pipeline rules lists them all."));
    }

    /// <summary>The page travels in the plugin's assembly under the name of the rule's class.</summary>
    public static string Page(Rule rule)
    {
        var type = rule.GetType();
        using var stream = type.Assembly.GetManifestResourceStream($"{type.Name}.md");
        if (stream is null)
            return string.Create(CultureInfo.InvariantCulture, $"# {rule.Name}\n\n{rule.Summary}\n\nSource: {rule.Source}.\n");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}

/// <summary>Asks for the pages of some rules.</summary>
/// <param name="Names">Their names; one that no rule goes by is left out.</param>
public sealed record ListRulePages(Sequence<string> Names) : IRequest<Answer<Sequence<PagedRule>>>;

/// <summary>A rule and the page about it, in Markdown.</summary>
public sealed record PagedRule(Rule Rule, string Page);

internal sealed class ListRulePagesHandler(PluginShelf plugins) : IRequestHandler<ListRulePages, Answer<Sequence<PagedRule>>>
{
    public Task<Answer<Sequence<PagedRule>>> Handle(ListRulePages request, CancellationToken cancellationToken) =>
        Task.FromResult<Answer<Sequence<PagedRule>>>(new Answer<Sequence<PagedRule>>.Given(Stages.Nameable(plugins.Trade).Rules
            .Where(rule => request.Names.Contains(rule.Item.Name))
            .Select(rule => new PagedRule(rule.Item, ShowRuleHandler.Page(rule.Item)))
            .OrderBy(paged => paged.Rule.Name, StringComparer.Ordinal)
            .ToSequence()));
}

/// <summary>A name that nothing goes by.</summary>
internal static class Unknown
{
    private const int MostMeant = 4;

    // fewer letters begin too much
    private const int FewestLetters = 3;

    public static Answer<T>.Refused Name<T>(string what, string name, IEnumerable<string> known, string hint)
    {
        var names = known.ToList();
        var meant = Meant(name, names) is { Count: > 0 } near ? $"Did you mean {Either(near)}? " : "";
        return new Answer<T>.Refused([new Refusal($"there is no {what} '{Faults.OnOneLine(name)}'", meant + hint)]);
    }

    /// <summary>The nearest by its letters; else those that hold the name, written without hyphens or cut short, if they are few.</summary>
    private static List<string> Meant(string name, List<string> known)
    {
        if (new Nearest().To(name, known) is { } near)
            return [near];
        var letters = Letters(name);
        if (letters.Length < FewestLetters)
            return [];
        var starting = known.FindAll(other => Letters(other).StartsWith(letters, StringComparison.OrdinalIgnoreCase));
        var holding = starting.Count > 0 ? starting : known.FindAll(other => Letters(other).Contains(letters, StringComparison.OrdinalIgnoreCase));
        if (holding.Count is > 0 and <= MostMeant)
            return holding;
        // cut short and mistyped: the beginning decides
        return new Nearest().To(letters, known.Select(other => Letters(other)[..Math.Min(letters.Length, Letters(other).Length)])) is { } beginning
            ? [.. known.Where(other => Letters(other).StartsWith(beginning, StringComparison.Ordinal)).Take(MostMeant)]
            : [];
    }

    private static string Either(List<string> names) => names.Count == 1 ? names[0] : $"{string.Join(", ", names.SkipLast(1))} or {names[^1]}";

    private static string Letters(string name) => string.Concat(name.Where(char.IsLetterOrDigit));
}
