using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Unicode;
using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>The text of one workflow file.</summary>
/// <param name="Name">The file's name as the painter gave it; used for places only.</param>
/// <param name="Text">Its text, without a byte order mark.</param>
public sealed record SourceText(string Name, string Text)
{
    /// <summary>Largest file, in bytes. Check it before loading, so that a huge file is never in memory.</summary>
    public const int LargestBytes = ReadingLimits.LargestFileBytes;

    /// <summary>What to say about a file that is larger than <see cref="LargestBytes"/>.</summary>
    public static Finding TooLarge(string name, long bytes) => new()
    {
        Level = Level.Error,
        Place = new Place(name, 1, 1),
        Message = string.Create(CultureInfo.InvariantCulture, $"The file has {bytes:N0} bytes; a workflow file has at most {LargestBytes:N0}."),
        Remedy = "Check that this is the file you meant; part a very large batch into several files by kit.",
    };

    /// <summary>
    /// Bytes to text: UTF-8 with or without a byte order mark, or UTF-16 with one. Anything else (a picture, a program, another
    /// encoding) gives a finding at the first byte that cannot be text.
    /// </summary>
    public static Decoding Decode(string name, ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length > LargestBytes)
            return new Decoding(null, [TooLarge(name, bytes.Length)]);
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE, 0, 0]) || bytes.StartsWith((ReadOnlySpan<byte>)[0, 0, 0xFE, 0xFF]))
            return Refused(name, new Place(name, 1, 1), "The file is written in UTF-32.");
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
            return FromUtf16(name, bytes[2..], new UnicodeEncoding(bigEndian: false, byteOrderMark: false, throwOnInvalidBytes: true));
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
            return FromUtf16(name, bytes[2..], new UnicodeEncoding(bigEndian: true, byteOrderMark: false, throwOnInvalidBytes: true));
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
            bytes = bytes[3..];
        return FromUtf8(name, bytes);
    }

    private static Decoding FromUtf8(string name, ReadOnlySpan<byte> bytes)
    {
        var zero = bytes.IndexOf((byte)0);
        if (zero >= 0)
            return Refused(name, PlaceOf(name, bytes[..zero]), "There is a zero byte here, so this is not a text file.");
        var characters = new char[bytes.Length];
        var status = Utf8.ToUtf16(bytes, characters, out var read, out var written, replaceInvalidSequences: false);
        if (status != OperationStatus.Done)
        {
            var message = string.Create(CultureInfo.InvariantCulture, $"The byte {bytes[read]:X2} here is not UTF-8 text.");
            return Refused(name, PlaceOf(name, bytes[..read]), message);
        }

        return new Decoding(new SourceText(name, new string(characters, 0, written)), []);
    }

    private static Decoding FromUtf16(string name, ReadOnlySpan<byte> bytes, UnicodeEncoding encoding)
    {
        try
        {
            var text = encoding.GetString(bytes);
            var zero = text.IndexOf('\0', StringComparison.Ordinal);
            return zero < 0
                ? new Decoding(new SourceText(name, text), [])
                : Refused(name, PlaceOf(name, Encoding.UTF8.GetBytes(text[..zero])), "There is a zero character here, so this is not a text file.");
        }
        catch (DecoderFallbackException)
        {
            return Refused(name, new Place(name, 1, 1), "The file begins like UTF-16 text but holds bytes that are not.");
        }
    }

    private static Decoding Refused(string name, Place place, string message) => new(null,
    [
        new Finding
        {
            Level = Level.Error,
            Place = place,
            Message = message,
            Remedy = $"A workflow is a text file in UTF-8; check that ‘{name}’ is the file you meant, or save it as UTF-8.",
        },
    ]);

    /// <summary>The place just after valid UTF-8.</summary>
    private static Place PlaceOf(string name, ReadOnlySpan<byte> before)
    {
        var lineStart = before.LastIndexOf((byte)'\n') + 1;
        return new Place(name, before.Count((byte)'\n') + 1, Encoding.UTF8.GetCharCount(before[lineStart..]) + 1);
    }
}

/// <summary>The outcome of making text of bytes.</summary>
/// <param name="Source">The text, or null if the bytes are not text.</param>
/// <param name="Findings">Why not.</param>
public sealed record Decoding(SourceText? Source, Sequence<Finding> Findings);
