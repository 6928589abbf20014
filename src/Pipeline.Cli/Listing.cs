using MediatR;
using Pipeline.Engine;
using Pipeline.Workflows;

namespace Pipeline.Cli;

/// <summary>Answers <c>pipeline verbs</c>, <c>pipeline rules</c> and <c>pipeline schema</c>.</summary>
internal static class Listing
{
    public static Task<int> Verbs(Room room, string? name) => name is null
        ? Listed(room, new ListVerbs(), verb => (verb.Item.Name, verb.Item.Summary))
        : Printed(room, new ShowVerb(name));

    public static Task<int> Schema(Room room) => Printed(room, new PrintSchema());

    public static Task<int> Rules(Room room, string? name) => name is null
        ? Listed(room, new ListRules(), rule => (rule.Item.Name, rule.Item.Summary))
        : Printed(room, new ShowRule(name));

    private static async Task<int> Listed<T>(Room room, IRequest<Answer<Listing<T>>> request, Func<Brought<T>, (string Name, string Summary)> line)
    {
        if (room.Parts is not { } parts)
            return Complaint.Of(room.Refusal!);
        switch (await Composition.Engine(parts).Send(request).ConfigureAwait(false))
        {
            case Answer<Listing<T>>.Given { Value: var listing }:
                Complaint.OfPlugins(listing.Findings);
                var lines = listing.Items.Select(line).ToList();
                var width = lines.Select(each => each.Name.Length).DefaultIfEmpty().Max();
                foreach (var (name, summary) in lines)
                    Console.Out.Write($"{name.PadRight(width)}  {summary}\n");
                return listing.Findings.IsEmpty ? ExitCode.Fine : ExitCode.Errors;
            case Answer<Listing<T>>.Refused refused:
                return Complaint.Of(refused.Why);
            case Answer<Listing<T>>.Broke broke:
                return Complaint.OfBreakdown(broke.What, broke.Report);
            case var other:
                throw new InvalidOperationException($"Unknown answer {other}.");
        }
    }

    private static async Task<int> Printed(Room room, IRequest<Answer<string>> request)
    {
        if (room.Parts is not { } parts)
            return Complaint.Of(room.Refusal!);
        switch (await Composition.Engine(parts).Send(request).ConfigureAwait(false))
        {
            case Answer<string>.Given { Value: var text }:
                Complaint.OfPlugins(parts.Plugins.Findings);
                Console.Out.Write(text.EndsWith('\n') ? text : text + "\n");
                return ExitCode.Fine;
            case Answer<string>.Refused refused:
                return Complaint.Of(refused.Why);
            case Answer<string>.Broke broke:
                return Complaint.OfBreakdown(broke.What, broke.Report);
            case var other:
                throw new InvalidOperationException($"Unknown answer {other}.");
        }
    }
}
