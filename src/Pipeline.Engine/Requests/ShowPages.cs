using System.Globalization;
using System.Text;
using MediatR;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Asks for the page about one rule, in Markdown.</summary>
public sealed record ShowRule(string Name) : IRequest<Answer<string>>;

internal sealed class ShowRuleHandler(PluginShelf plugins) : IRequestHandler<ShowRule, Answer<string>>
{
    public Task<Answer<string>> Handle(ShowRule request, CancellationToken cancellationToken)
    {
        var rules = Surfaces.Walk.OwnRules.Concat(plugins.Trade.Rules).Select(rule => rule.Item).ToList();
        return Task.FromResult<Answer<string>>(rules.FirstOrDefault(rule => rule.Name == request.Name) is { } found
            ? new Answer<string>.Given(Page(found))
            : Unknown.Name("rule", request.Name, rules.Select(rule => rule.Name), "pipeline rules lists them all."));
    }

    /// <summary>The page travels in the plugin's assembly under the name of the rule's class.</summary>
    private static string Page(Rule rule)
    {
        var type = rule.GetType();
        using var stream = type.Assembly.GetManifestResourceStream($"{type.Name}.md");
        if (stream is null)
            return string.Create(CultureInfo.InvariantCulture, $"# {rule.Name}\n\n{rule.Summary}\n\nSource: {rule.Source}.\n");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}

/// <summary>A name that nothing goes by.</summary>
internal static class Unknown
{
    public static Answer<string>.Refused Name(string what, string name, IEnumerable<string> known, string hint)
    {
        var meant = new Nearest().To(name, known) is { } near ? $"Did you mean {near}? " : "";
        return new Answer<string>.Refused([new Refusal($"there is no {what} '{Faults.OnOneLine(name)}'", meant + hint)]);
    }
}
