using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>What the steps make of the bench's tools and places, looked at once all of them are bound.</summary>
internal sealed class BenchUse(Desk desk)
{
    // wet pieces stand there where a step names no other place
    private const string Rack = "drying rack";

    private readonly List<(SyntaxNode Node, string Name)> places = [];

    /// <summary>Notes that a step names a place.</summary>
    public void NotePlace(SyntaxNode node, string name) => places.Add((node, name));

    /// <summary>Says where pieces are to stand in what is held in the hand, and which tool nothing uses that was probably meant to be another.</summary>
    /// <param name="tools">The tools as the bench names them.</param>
    /// <param name="work">The work of all steps.</param>
    public void Check(IReadOnlyCollection<TextNode> tools, IReadOnlyCollection<Work> work)
    {
        var held = work.Select(one => one.Tool).OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var (node, name) in places.Where(place => held.Contains(place.Name)))
            desk.Error(node, $"No piece can stand in the {name}: it is a tool that holds paint.", "Name a place or a machine, and list it at the bench under ‘tools’ with how many pieces it holds.");
        var known = held.Concat(work.Any(one => one.NeedsDryingPlace) ? [Rack] : []).ToList();
        var used = places.Select(place => place.Name).Concat(known).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var tool in tools.Where(tool => !used.Contains(Desk.Plain(tool.Text))))
            desk.UnusedName(tool, "The batch", "tool or place", known);
    }
}
