using MediatR;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Asks which verbs there are.</summary>
public sealed record ListVerbs : IRequest<Answer<Listing<Verb>>>;

/// <summary>Asks which rules there are.</summary>
public sealed record ListRules : IRequest<Answer<Listing<Rule>>>;

/// <summary>What the plugins bring, and what is to be said about those that do not work.</summary>
/// <param name="Items">Sorted by name.</param>
/// <param name="Findings">One for each plugin that does not work.</param>
public sealed record Listing<T>(Sequence<Brought<T>> Items, Sequence<Finding> Findings);

internal sealed class ListVerbsHandler(PluginShelf plugins) : IRequestHandler<ListVerbs, Answer<Listing<Verb>>>
{
    public Task<Answer<Listing<Verb>>> Handle(ListVerbs request, CancellationToken cancellationToken) =>
        Task.FromResult<Answer<Listing<Verb>>>(new Answer<Listing<Verb>>.Given(new Listing<Verb>(plugins.Trade.Verbs, plugins.Findings)));
}

internal sealed class ListRulesHandler(PluginShelf plugins) : IRequestHandler<ListRules, Answer<Listing<Rule>>>
{
    public Task<Answer<Listing<Rule>>> Handle(ListRules request, CancellationToken cancellationToken) =>
        Task.FromResult<Answer<Listing<Rule>>>(new Answer<Listing<Rule>>.Given(new Listing<Rule>(
            Stages.Nameable(plugins.Trade).Rules,
            plugins.Findings)));
}
