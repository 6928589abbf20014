using System.Text.Json;
using NodaTime;
using NodaTime.Text;
using Pipeline.Abstractions;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>Reads back what <see cref="PlanJson"/> wrote, as far as it is needed to stay close to a plan or to compare it.</summary>
public static class PlanJsonReading
{
    // What a workflow file may say at most.
    private const int MostUnits = 9_999;

    private static readonly OffsetDateTimePattern MomentPattern = OffsetDateTimePattern.CreateWithInvariantCulture("uuuu'-'MM'-'dd'T'HH':'mm':'sso<Z+HH:mm>");

    /// <summary>The plan; or what is wrong with the text, as a sentence without its full stop that follows the file's name.</summary>
    /// <param name="utf8">The file's bytes.</param>
    public static (WrittenPlan? Plan, string? Wrong) Read(ReadOnlyMemory<byte> utf8)
    {
        try
        {
            using var document = JsonDocument.Parse(utf8);
            var root = new Node(document.RootElement, "");
            if (document.RootElement.ValueKind != JsonValueKind.Object || !document.RootElement.TryGetProperty("kind", out var kind) || kind.ValueKind != JsonValueKind.String)
                return (null, "is JSON, but no plan");
            if (kind.GetString() != "plan")
                return (null, $"holds {kind.GetString()}, not a plan");
            var version = root["version"].Whole();
            return version == PlanJson.Version
                ? (Plan(root), null)
                : (null, FormattableString.Invariant($"is a plan of version {version}; this program reads version {PlanJson.Version}"));
        }
        catch (JsonException fault)
        {
            return (null, FormattableString.Invariant($"is no JSON: it goes wrong on line {(fault.LineNumber ?? 0) + 1}"));
        }
        catch (MisreadException fault)
        {
            return (null, $"is not a whole plan: {fault.Message}");
        }
    }

    private static WrittenPlan Plan(Node root)
    {
        var zone = root["zone"].Text();
        var sittings = root["days"].Items().SelectMany(day => day["sittings"].Items()).ToList();
        return new WrittenPlan
        {
            Batch = root["batch"].Text(),
            Zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(zone) ?? throw new MisreadException($"zone: there is no time zone '{zone}'"),
            Tasks = sittings.SelectMany(Tasks).OrderBy(task => task.Start).ToSequence(),
            Finishes = root["finishes"].Items().Select(finish => new WrittenFinish(finish["model"].Text(), finish["ready"].Moment(), finish.Has("due") ? finish["due"].Moment() : null)).ToSequence(),
            CloseDowns = sittings.SelectMany(CloseDowns).OrderBy(close => close.Start).ToSequence(),
            Done = root.Has("done") ? Done(root["done"]) : null,
        };
    }

    private static DoneWork Done(Node done)
    {
        var until = done["until"].Moment();
        return new DoneWork(
            until,
            done.Has("asIn") ? done["asIn"].Text() : null,
            done["tasks"].Items().Select(task => Ended(task, until)).OrderBy(task => task.Start).ToSequence(),
            done["closeDowns"].Items().Select(close => new WrittenCloseDown(
                close["painter"].Text(), close["exactStart"].Moment(), close["exactEnd"].Moment(), close["sittingFrom"].Moment())).OrderBy(close => close.Start).ToSequence());
    }

    // Putting away may go on a little longer.
    private static WrittenTask Ended(Node task, Instant until)
    {
        var read = Task(task, task["painter"].Text(), task["sittingFrom"].Moment(), task["sittingTo"].Moment(), task["cleansFirst"].Is());
        return read.WorkEnd < until + Duration.FromMinutes(1) ? read : throw new MisreadException($"{task.Way} ends after the time up to which work is done");
    }

    private static IEnumerable<WrittenCloseDown> CloseDowns(Node sitting) => sitting["tasks"].Items().Where(task => task["sort"].Text() == "close-down")
        .Select(task => new WrittenCloseDown(sitting["painter"].Text(), task["exactStart"].Moment(), task["exactEnd"].Moment(), sitting["from"].Moment()));

    private static IEnumerable<WrittenTask> Tasks(Node sitting) => sitting["tasks"].Items().Where(task => task["sort"].Text() == "step")
        .Select(task => Task(task, sitting["painter"].Text(), sitting["from"].Moment(), sitting["to"].Moment(), task.Has("cleanOutBefore")));

    private static WrittenTask Task(Node task, string painter, Instant sitting, Instant sittingEnd, bool cleansFirst)
    {
        var read = new WrittenTask(
            task["model"].Text(),
            task["step"].Text(),
            task["coat"].Number(),
            task["ofCoats"].Number(),
            task["firstUnit"].Number(),
            task["units"].Number(),
            task["ofUnits"].Number(),
            painter,
            task["exactStart"].Moment(),
            task["exactEnd"].Moment(),
            task["workStart"].Moment(),
            task["workEnd"].Moment(),
            task["together"].Is(),
            sitting,
            sittingEnd,
            task["words"].Text(),
            cleansFirst);
        if (read.OfUnits > MostUnits || read.Units > read.OfUnits || read.FirstUnit > read.OfUnits - read.Units + 1)
            throw new MisreadException($"{task.Way} has more units than there are");
        if (read.Start > read.WorkStart || read.WorkStart > read.WorkEnd || read.WorkEnd > read.End)
            throw new MisreadException($"{task.Way} ends before it begins");
        return read;
    }

    // A value and the way to it, for what is said when it is not what it should be.
    private readonly record struct Node(JsonElement Value, string Way)
    {
        public Node this[string name] => Value.ValueKind == JsonValueKind.Object && Value.TryGetProperty(name, out var value)
            ? new Node(value, Way.Length == 0 ? name : $"{Way}.{name}")
            : throw new MisreadException($"{(Way.Length == 0 ? "" : Way + ": ")}'{name}' is missing");

        public bool Has(string name) => Value.ValueKind == JsonValueKind.Object && Value.TryGetProperty(name, out _);

        public IEnumerable<Node> Items()
        {
            if (Value.ValueKind != JsonValueKind.Array)
                throw new MisreadException($"{Way} is no list");
            var way = Way;
            return Value.EnumerateArray().Select((item, i) => new Node(item, FormattableString.Invariant($"{way}[{i}]")));
        }

        public string Text() => Value.ValueKind == JsonValueKind.String ? Value.GetString()! : throw new MisreadException($"{Way} is no text");

        public int Whole() => Value.ValueKind == JsonValueKind.Number && Value.TryGetInt32(out var whole) && whole >= 0 ? whole : throw new MisreadException($"{Way} is no whole number");

        /// <summary>A number that counts from 1.</summary>
        public int Number() => Whole() is > 0 and var number ? number : throw new MisreadException($"{Way} is no number from 1 on");

        public bool Is() => Value.ValueKind is JsonValueKind.True or JsonValueKind.False ? Value.GetBoolean() : throw new MisreadException($"{Way} is neither true nor false");

        public Instant Moment() => MomentPattern.Parse(Text()) is { Success: true } parsed ? parsed.Value.ToInstant() : throw new MisreadException($"{Way} is no moment");
    }

    private sealed class MisreadException(string message) : Exception(message);
}
