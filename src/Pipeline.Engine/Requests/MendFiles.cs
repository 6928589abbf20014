using System.Text;
using MediatR;
using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Engine;

/// <summary>Asks for what findings say can be mended to be mended, and for the files to be checked again.</summary>
/// <param name="Inputs">At least one; taken together as one batch.</param>
/// <param name="Write">True to write the mended files, each whole or not at all; only files, no streams.</param>
public sealed record MendFiles(Sequence<WorkflowInput> Inputs, bool Write) : IRequest<Answer<Mended>>;

internal sealed class MendFilesHandler(IDisk disk, Inputs inputs, PluginShelf plugins) : IRequestHandler<MendFiles, Answer<Mended>>
{
    public Task<Answer<Mended>> Handle(MendFiles request, CancellationToken cancellationToken) => Task.FromResult(Mend(request));

    private Answer<Mended> Mend(MendFiles request)
    {
        if (request.Write && request.Inputs.Any(input => input is not WorkflowInput.FromFile))
            return new Answer<Mended>.Refused([new Refusal("standard input cannot be written back", "Leave --write out and take the diff, or name the file.")]);
        var (texts, refusals) = inputs.Read(request.Inputs);
        if (!refusals.IsEmpty)
            return new Answer<Mended>.Refused(refusals);
        var mended = Mender.Mend(texts, plugins.Trade);
        if (request.Write && Written(mended) is { Count: > 0 } failures)
            return new Answer<Mended>.Refused(failures.ToSequence());
        return new Answer<Mended>.Given(mended with
        {
            Before = WithPlugins(mended.Before),
            After = WithPlugins(mended.After),
        });
    }

    private Checked WithPlugins(Checked done) => done with { Findings = plugins.Findings.Concat(done.Findings).ToSequence() };

    /// <summary>Writes the texts that changed; says why where one cannot be. A file that somebody changed meanwhile is left alone.</summary>
    private List<Refusal> Written(Mended mended)
    {
        var failures = new List<Refusal>();
        var pending = new List<(string Path, byte[] Bytes)>();
        foreach (var (before, after) in mended.Before.Texts.Zip(mended.After.Texts))
        {
            if (before.Text == after.Text)
                continue;
            if (disk.Read(before.Name, SourceText.LargestBytes) is FileRead.Whole whole
                && SourceText.Decode(before.Name, whole.Bytes.Span).Source is { } now && now.Text == before.Text)
                pending.Add((before.Name, TextBytes.Like(whole.Bytes.Span, after.Text)));
            else
                failures.Add(new Refusal($"{before.Name} was changed by something else meanwhile, and is left as it is", "Check it again."));
        }

        if (failures.Count == 0)
            failures.AddRange(pending.Select(each => disk.Write(each.Path, each.Bytes)).OfType<Refusal>());
        return failures;
    }
}

/// <summary>Text to bytes.</summary>
internal static class TextBytes
{
    /// <summary>A text in the encoding that other bytes have, with the byte order mark they begin with.</summary>
    public static byte[] Like(ReadOnlySpan<byte> bytes, string text)
    {
        Encoding encoding = bytes switch
        {
            [0xFF, 0xFE, ..] => new UnicodeEncoding(bigEndian: false, byteOrderMark: true),
            [0xFE, 0xFF, ..] => new UnicodeEncoding(bigEndian: true, byteOrderMark: true),
            [0xEF, 0xBB, 0xBF, ..] => new UTF8Encoding(encoderShouldEmitUTF8Identifier: true),
            _ => new UTF8Encoding(encoderShouldEmitUTF8Identifier: false),
        };
        return [.. encoding.GetPreamble(), .. encoding.GetBytes(text)];
    }
}
