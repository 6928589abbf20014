using System.Text;
using Pipeline.Engine;

namespace Pipeline.Tests.Units.Engine;

public sealed class RealDiskTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("disk").FullName;
    private readonly RealDisk disk = new();

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(100)]
    public void A_file_up_to_the_limit_is_read_whole(int bytes)
    {
        File.WriteAllBytes(At("a"), new byte[bytes]);

        disk.Read(At("a"), 100).Should().BeOfType<FileRead.Whole>().Which.Bytes.Length.Should().Be(bytes);
    }

    [Fact]
    public void A_larger_file_is_refused_with_its_size()
    {
        File.WriteAllBytes(At("a"), new byte[101]);

        disk.Read(At("a"), 100).Should().Be(new FileRead.TooLarge(101));
    }

    [Fact]
    public void A_stream_of_unknown_length_is_read_no_further_than_the_limit()
    {
        RealDisk.ReadLimited(new Endless(), 200_000).Should().BeOfType<FileRead.TooLarge>();
        RealDisk.ReadLimited(new Endless(left: 150_000), 200_000).Should().BeOfType<FileRead.Whole>().Which.Bytes.Length.Should().Be(150_000);
        RealDisk.ReadLimited(new Endless(left: 200_000), 200_000).Should().BeOfType<FileRead.Whole>();
    }

    [Theory]
    [InlineData("nowhere", "there is no such file")]
    [InlineData(".", "it is a folder")]
    [InlineData("bad\0name", "cannot read")]
    public void What_cannot_be_read_says_why(string name, string why)
    {
        var refused = disk.Read(At(name), 100).Should().BeOfType<FileRead.Refused>().Which.Why;

        refused.Message.Should().Contain(why);
        refused.Hint.Should().NotBeEmpty();
    }

    [Fact]
    public void A_file_is_written_over_whole_and_leaves_nothing_beside_it()
    {
        disk.Write(At("a"), "old and long"u8).Should().BeNull();
        disk.Write(At("a"), "new"u8).Should().BeNull();

        File.ReadAllText(At("a")).Should().Be("new");
        Directory.GetFiles(folder).Should().ContainSingle();
    }

    [Fact]
    public void A_reader_that_has_the_old_file_open_keeps_the_old_bytes()
    {
        disk.Write(At("a"), "old"u8);
        using var reader = new StreamReader(At("a"), Encoding.UTF8);

        disk.Write(At("a"), "new"u8).Should().BeNull();

        reader.ReadToEnd().Should().Be("old");
    }

    [Fact]
    public void What_cannot_be_written_says_why_and_leaves_nothing_behind()
    {
        Directory.CreateDirectory(At("a"));

        disk.Write(At("a"), "new"u8)!.Message.Should().StartWith("cannot write");
        disk.Write(At("nowhere/a"), "new"u8)!.Message.Should().EndWith("the folder is not there");
        Directory.GetFiles(folder).Should().BeEmpty();
    }

    [Fact]
    public void Removing_what_is_not_there_is_no_mistake()
    {
        disk.Remove(At("a")).Should().BeNull();
        disk.Remove(At("nowhere/a")).Should().BeNull();
    }

    [Fact]
    public void A_folder_is_made_with_those_above_it()
    {
        disk.MakeFolder(At("a/b/c")).Should().BeNull();
        disk.MakeFolder(At("a/b/c")).Should().BeNull();

        File.WriteAllText(At("file"), "");
        disk.MakeFolder(At("file/b"))!.Message.Should().StartWith("cannot make the folder");
    }

    private string At(string name) => Path.Combine(folder, name);

    private sealed class Endless(int left = int.MaxValue) : MemoryStream
    {
        private int left = left;

        public override bool CanSeek => false;

        public override int Read(byte[] buffer, int offset, int count)
        {
            var read = Math.Min(Math.Min(count, 7_777), left);
            left -= read;
            return read;
        }
    }
}
