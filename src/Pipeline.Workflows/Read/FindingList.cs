using System.Globalization;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Collects what is found while a file is read and bound. The same words about the same place are kept once.</summary>
internal sealed class FindingList
{
    private readonly List<Finding> findings = [];
    private readonly HashSet<(string File, int Line, int Column, string Message)> told = [];

    public bool IsEmpty => findings.Count == 0;

    public bool IsFull { get; private set; }

    public bool HasErrors { get; private set; }

    public int Count => findings.Count;

    public void Error(Place place, string message, string? remedy = null, params ReadOnlySpan<Related> related) =>
        Add(Level.Error, place, message, remedy, related, null);

    public void Error(Place place, string message, string? remedy, Mend? mend) => Add(Level.Error, place, message, remedy, [], mend);

    public void Warning(Place place, string message, string? remedy = null) => Add(Level.Warning, place, message, remedy, [], null);

    public void Note(Place place, string message, string? remedy = null) => Add(Level.Note, place, message, remedy, [], null);

    private void Add(Level level, Place place, string message, string? remedy, ReadOnlySpan<Related> related, Mend? mend)
    {
        HasErrors |= level == Level.Error;
        if (IsFull || !told.Add((place.File, place.Line, place.Column, message)))
            return;
        if (findings.Count == ReadingLimits.MostFindings)
        {
            IsFull = true;
            message = string.Create(CultureInfo.InvariantCulture, $"There are more mistakes from here on; only the first {ReadingLimits.MostFindings:N0} are shown.");
            remedy = "Mend those first.";
            related = [];
            mend = null;
        }

        findings.Add(new Finding { Level = level, Place = place, Message = message, Remedy = remedy, Related = Sequence.Create(related), Mend = mend });
    }

    /// <summary>In the order of the files' places.</summary>
    public Sequence<Finding> ToSequence() => findings.OrderBy(finding => finding.Place).ToSequence();
}
