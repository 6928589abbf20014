using System.Globalization;
using Pipeline.Engine;
using Pipeline.Reports;

namespace Pipeline.Cli;

/// <summary>Answers <c>pipeline why</c>.</summary>
internal static class Explaining
{
    public static async Task<int> Run(Room room, WhyWords.Wish wish)
    {
        if (room.Parts is not { } parts)
            return Complaint.Of(room.Refusal!);
        if (Place(wish.Place) is not var (file, line))
            return Complaint.Of(new Refusal($"'{wish.Place}' names no line", "Give a file and a line, such as crew.yaml:41."));
        if (InputWords.Of([file, .. wish.With], "stdin", out var refusal) is not { } inputs)
            return Complaint.Of(refusal!);
        switch (await Composition.Engine(parts).Send(new ExplainLine(inputs, line, wish.Model)).ConfigureAwait(false))
        {
            case Answer<LineExplained>.Given { Value: { Look: { } look } explained }:
                WhyText.Write(look, explained.Others, Screen.Results);
                return ExitCode.Fine;
            case Answer<LineExplained>.Given { Value: var explained }:
                Checking.Say(explained.Checked.Findings, explained.Checked);
                Console.Error.Write("pipeline: the steps cannot be explained until these mistakes are mended\n");
                return ExitCode.Errors;
            case Answer<LineExplained>.Refused refused:
                return Complaint.Of(refused.Why);
            case Answer<LineExplained>.Broke broke:
                return Complaint.OfBreakdown(broke.What, broke.Report);
            case var other:
                throw new InvalidOperationException($"Unknown answer {other}.");
        }
    }

    /// <summary>A file and a line; a column after it, as in findings, is passed over.</summary>
    private static (string File, int Line)? Place(string place)
    {
        var words = place.Split(':');
        for (var last = words.Length - 1; last >= 1 && last >= words.Length - 2; last--)
        {
            var isLine = int.TryParse(words[last], NumberStyles.None, CultureInfo.InvariantCulture, out var line) && line >= 1;
            var isBeforeColumn = last > 1 && int.TryParse(words[last - 1], NumberStyles.None, CultureInfo.InvariantCulture, out _);
            if (isLine && !(isBeforeColumn && last == words.Length - 1))
                return (string.Join(':', words[..last]), line);
        }

        return null;
    }
}
