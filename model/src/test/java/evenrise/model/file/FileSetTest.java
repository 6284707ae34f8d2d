package evenrise.model.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FileSetTest {
    @TempDir
    private Path folder;

    @Test
    void writesEveryFileAndNamesThemAll() throws Exception {
        set("a.txt", "one", "b.txt", "two").write();

        assertThat(names()).containsExactlyInAnyOrder("a.txt", "b.txt", FileSet.MANIFEST);
        assertThat(folder.resolve("a.txt")).hasContent("one");
        assertThat(folder.resolve(FileSet.MANIFEST)).content().contains("a.txt", "b.txt");
    }

    @Test
    void removesWhatTheEarlierRunWroteAndThisOneDoesNot() throws Exception {
        set("plan-0003.json", "three", "front.json", "front").write();

        set("plan-0005.json", "five", "front.json", "newer").write();

        assertThat(names()).containsExactlyInAnyOrder("plan-0005.json", "front.json", FileSet.MANIFEST);
        assertThat(folder.resolve("front.json")).hasContent("newer");
    }

    @Test
    void leavesWhatSomebodyHasChangedSince() throws Exception {
        set("plan-0003.json", "three").write();
        Files.writeString(folder.resolve("plan-0003.json"), "mine");

        set("plan-0005.json", "five").write();

        assertThat(folder.resolve("plan-0003.json")).hasContent("mine");
    }

    @Test
    void leavesFilesOfOthersAlone() throws Exception {
        Files.writeString(folder.resolve("plan-0009.json"), "the engineer's own");

        set("plan-0005.json", "five").write();

        assertThat(folder.resolve("plan-0009.json")).hasContent("the engineer's own");
    }

    @Test
    void tellsWhichFilesAreNotOurs() throws Exception {
        set("a.txt", "one", "b.txt", "two").write();
        Files.writeString(folder.resolve("b.txt"), "changed");
        Files.writeString(folder.resolve("c.txt"), "theirs");

        assertThat(new FileSet(folder).foreign(List.of("a.txt", "b.txt", "c.txt", "d.txt")))
                .containsExactly("b.txt", "c.txt");
    }

    @Test
    void leavesTheEarlierFilesWholeWhereOneCannotBeWritten() throws Exception {
        set("a.txt", "one", "b.txt", "two").write();
        Files.createDirectory(folder.resolve("c.txt")); // a folder in the way of a name that has no parent
        FileSet broken = set("a.txt", "newer", "no/such/folder.txt", "x");

        assertThatThrownBy(broken::write).isInstanceOf(WriteFailed.class);

        assertThat(folder.resolve("a.txt")).hasContent("one");
        assertThat(names()).containsExactlyInAnyOrder("a.txt", "b.txt", "c.txt", FileSet.MANIFEST);
    }

    /** What a kill right after the commit leaves: the list in place, some files under their names, some not. */
    @Test
    void finishesWhatAKilledRunHadCommitted() throws Exception {
        set("a.txt", "one", "b.txt", "two", "old.txt", "old").write();
        Files.writeString(folder.resolve(".b.txt.7-x.tmp"), "newer b");
        Files.writeString(folder.resolve("a.txt"), "newer a");
        new FileManifest(List.of(
                        new FileManifest.Entry("a.txt", hash("newer a"), Optional.of(".a.txt.7-x.tmp")),
                        new FileManifest.Entry("b.txt", hash("newer b"), Optional.of(".b.txt.7-x.tmp"))))
                .write(folder.resolve(FileSet.COMMITTED));

        FileSet.recover(folder);

        assertThat(names()).containsExactlyInAnyOrder("a.txt", "b.txt", FileSet.MANIFEST);
        assertThat(folder.resolve("a.txt")).hasContent("newer a");
        assertThat(folder.resolve("b.txt")).hasContent("newer b");
    }

    /** What a kill before the commit leaves: hidden files beside whole ones; their process is gone. */
    @Test
    void cleansUpAfterARunThatWasKilledBeforeItsCommit() throws Exception {
        set("a.txt", "one").write();
        long gone = 99_999_999; // beyond the greatest process number of the usual systems
        Files.writeString(folder.resolve(".a.txt." + gone + "-00000000-0000-0000-0000-000000000000.tmp"), "half");

        set("a.txt", "newer").write();

        assertThat(names()).containsExactlyInAnyOrder("a.txt", FileSet.MANIFEST);
    }

    @Test
    void neverFollowsANameOutOfTheFolder() throws Exception {
        Path outside = Files.writeString(folder.resolve("outside.txt"), "whole");
        Path inside = Files.createDirectory(folder.resolve("in"));
        Files.writeString(
                inside.resolve(FileSet.MANIFEST),
                "{\"files\":[{\"name\":\"../outside.txt\",\"sha256\":\"" + hash("whole") + "\"}]}");

        new FileSet(inside).add("a.txt", new byte[0]).write();

        assertThat(outside).hasContent("whole");
    }

    private FileSet set(String... namesAndTexts) {
        FileSet set = new FileSet(folder);
        for (int i = 0; i < namesAndTexts.length; i += 2) {
            set.add(namesAndTexts[i], namesAndTexts[i + 1].getBytes(StandardCharsets.UTF_8));
        }
        return set;
    }

    private static String hash(String text) {
        return FileManifest.hash(text.getBytes(StandardCharsets.UTF_8));
    }

    private List<String> names() throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(each -> each.getFileName().toString()).toList();
        }
    }
}
