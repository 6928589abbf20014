using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Where a workflow's text comes from.</summary>
public abstract record WorkflowInput
{
    private protected abstract void Closed();

    /// <summary>A file on the disk, named as the painter gave it.</summary>
    public sealed record FromFile(string Path) : WorkflowInput
    {
        private protected override void Closed() { }
    }

    /// <summary>A stream such as standard input, read to its end.</summary>
    /// <param name="Name">The name that findings show.</param>
    /// <param name="Stream">What to read; not disposed.</param>
    public sealed record FromStream(string Name, Stream Stream) : WorkflowInput
    {
        private protected override void Closed() { }
    }
}

/// <summary>Brings the texts of workflows into memory.</summary>
internal sealed class Inputs(IDisk disk)
{
    /// <summary>All texts in the order asked for, or everything that keeps them from being used.</summary>
    public (Sequence<SourceText> Texts, Sequence<Refusal> Refusals) Read(Sequence<WorkflowInput> inputs)
    {
        var texts = new List<SourceText>();
        var refusals = new List<Refusal>();
        foreach (var input in inputs)
        {
            var (name, read) = input switch
            {
                WorkflowInput.FromFile file => (file.Path, disk.Read(file.Path, SourceText.LargestBytes)),
                WorkflowInput.FromStream stream => (stream.Name, ReadStream(stream)),
                _ => throw new InvalidOperationException($"Unknown input {input}."),
            };
            switch (read)
            {
                case FileRead.Refused refused:
                    refusals.Add(refused.Why);
                    break;
                case FileRead.TooLarge large:
                    refusals.Add(AsRefusal(SourceText.TooLarge(name, large.Bytes)));
                    break;
                case FileRead.Whole whole:
                    var decoded = SourceText.Decode(name, whole.Bytes.Span);
                    refusals.AddRange(decoded.Findings.Select(AsRefusal));
                    if (decoded.Source is { } text)
                        texts.Add(text);
                    break;
            }
        }

        return (texts.ToSequence(), refusals.ToSequence());
    }

    private static FileRead ReadStream(WorkflowInput.FromStream input)
    {
        try
        {
            return RealDisk.ReadLimited(input.Stream, SourceText.LargestBytes);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            return new FileRead.Refused(new Refusal($"cannot read {input.Name}: {Faults.InWords(fault)}", "Check what is piped in."));
        }
    }

    /// <summary>Bytes that are no text are not a workflow at all, so the call cannot be used.</summary>
    private static Refusal AsRefusal(Finding finding) => new($"{finding.Place}: {finding.Message.TrimEnd('.')}", finding.Remedy ?? "Check that this is the file you meant.");
}
