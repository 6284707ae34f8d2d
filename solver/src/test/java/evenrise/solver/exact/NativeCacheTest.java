package evenrise.solver.exact;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class NativeCacheTest {
    @TempDir
    private Path folder;

    private final NativeFiles files = NativeFiles.ofThisPlatform();
    private final List<String> reasons = new ArrayList<>();

    @Nested
    class Filling {
        @Test
        void unpacksEveryFileOfThePlatformAndNothingElse() throws IOException {
            Path home = new NativeCache(folder, files).fill(reasons).orElseThrow();

            assertThat(names(home))
                    .containsExactlyInAnyOrderElementsOf(files.hashes().keySet());
            assertThat(names(folder)).hasSize(1);
        }

        @Test
        void usesWhatIsThere() throws IOException {
            Path home = new NativeCache(folder, files).fill(reasons).orElseThrow();
            Object before = Files.getAttribute(home.resolve(files.entryLibrary()), "lastModifiedTime");

            Path again = new NativeCache(folder, files).fill(reasons).orElseThrow();

            assertThat(again).isEqualTo(home);
            assertThat(Files.getAttribute(again.resolve(files.entryLibrary()), "lastModifiedTime"))
                    .isEqualTo(before);
        }

        @Test
        void unpacksAgainWhatIsBroken() throws IOException {
            Path home = new NativeCache(folder, files).fill(reasons).orElseThrow();
            long whole = Files.size(home.resolve(files.entryLibrary()));
            Files.writeString(home.resolve(files.entryLibrary()), "cut off");

            new NativeCache(folder, files).fill(reasons).orElseThrow();

            assertThat(home.resolve(files.entryLibrary())).hasSize(whole);
        }

        @Test
        void refusesAFileThatIsNotTheOneOnTheList() throws IOException {
            NativeFiles other = new NativeFiles(files.platform(), Map.of(files.entryLibrary(), "0".repeat(64)));

            assertThat(new NativeCache(folder, other).fill(reasons)).isEmpty();

            assertThat(reasons).singleElement().asString().contains("is not the file that was built for this version");
            assertThat(names(folder)).isEmpty();
        }

        @Test
        @DisabledOnOs(OS.WINDOWS)
        void saysWhyAFolderCannotHoldThem() {
            Path file = folder.resolve("file");
            assertThat(write(file)).isTrue();

            assertThat(new NativeCache(file, files).fill(reasons)).isEmpty();

            assertThat(reasons).singleElement().asString().contains("cannot be unpacked into '" + file + "'");
        }
    }

    @Nested
    class Cleaning {
        @Test
        void removesWhatAKilledRunLeftHalfFilled() throws Exception {
            Process gone = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-version")
                    .redirectErrorStream(true)
                    .start();
            gone.getInputStream().readAllBytes();
            gone.waitFor();
            Path left = Files.createDirectory(folder.resolve(".filling-" + gone.pid() + "-1f"));
            assertThat(write(left.resolve("half"))).isTrue();

            new NativeCache(folder, files).clean();

            assertThat(names(folder)).isEmpty();
        }

        @Test
        void leavesARunningOneAlone() throws IOException {
            Path filling = Files.createDirectory(
                    folder.resolve(".filling-" + ProcessHandle.current().pid() + "-1f"));

            new NativeCache(folder, files).clean();

            assertThat(filling).isDirectory();
        }
    }

    @Nested
    class Folders {
        @Test
        void lieWhereTheSystemKeepsCaches() {
            assertThat(NativeCache.folders(Map.of("XDG_CACHE_HOME", "/caches"), "/home/ann", "Linux"))
                    .startsWith(Path.of("/caches/evenrise"))
                    .hasSize(2);
            assertThat(NativeCache.folders(Map.of(), "/home/ann", "Linux"))
                    .startsWith(Path.of("/home/ann/.cache/evenrise"));
            assertThat(NativeCache.folders(Map.of(), "/Users/ann", "Mac OS X"))
                    .startsWith(Path.of("/Users/ann/Library/Caches/evenrise"));
        }

        @Test
        void endWithATemporaryOne() {
            assertThat(NativeCache.folders(Map.of(), null, "Linux")).hasSize(1);
        }
    }

    @Nested
    class Platforms {
        @Test
        void areNamedAsTheLibraryNamesThem() {
            assertThat(NativeFiles.platform("Linux", "amd64")).isEqualTo("ortools-linux-x86-64");
            assertThat(NativeFiles.platform("Mac OS X", "aarch64")).isEqualTo("ortools-darwin-aarch64");
            assertThat(NativeFiles.platform("Windows 11", "amd64")).isEqualTo("ortools-win32-x86-64");
        }

        @Test
        void thatHaveNoneAreUnfit() {
            assertThatThrownBy(() -> NativeFiles.of("ortools-plan9-sparc")).isInstanceOf(Unfit.class);
        }

        /** The list stands for what is in the library's jars: a new version of it needs a new list. */
        @Test
        void areListedWithTheHashesOfTheirFiles() throws IOException {
            for (Map.Entry<String, String> each : files.hashes().entrySet()) {
                try (InputStream in = files.open(each.getKey())) {
                    assertThat(java.util.HexFormat.of()
                                    .formatHex(NativeFiles.sha256().digest(in.readAllBytes())))
                            .as(each.getKey())
                            .isEqualTo(each.getValue());
                }
            }
        }
    }

    private static List<String> names(Path folder) throws IOException {
        try (Stream<Path> list = Files.list(folder)) {
            return list.map(each -> each.getFileName().toString()).toList();
        }
    }

    private static boolean write(Path file) {
        try {
            Files.writeString(file, "x");
            return true;
        } catch (IOException e) {
            return false;
        }
    }
}
