package evenrise.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AnswerFolderTest {
    private static final String KEY = "ab".repeat(32);

    @TempDir
    private Path folder;

    @Test
    void keepsTheFirstAnswerOfAJob() throws Exception {
        try (AnswerFolder answers = AnswerFolder.held(folder, ".json").orElseThrow()) {
            assertThat(answers.answer(KEY)).isEmpty();
            assertThat(answers.land(KEY, new byte[] {1})).isTrue();
            assertThat(answers.land(KEY, new byte[] {2})).isFalse();
            assertThat(answers.answer(KEY).orElseThrow()).containsExactly(1);
        }
        assertThat(folder.resolve(KEY + ".json")).hasBinaryContent(new byte[] {1});
    }

    @Test
    void goesOnWithWhatAnEarlierRunHasLanded() throws Exception {
        try (AnswerFolder answers = AnswerFolder.held(folder, ".json").orElseThrow()) {
            answers.land(KEY, new byte[] {1});
        }

        try (AnswerFolder later = AnswerFolder.held(folder, ".json").orElseThrow()) {
            assertThat(later.answer(KEY).orElseThrow()).containsExactly(1);
        }
    }

    @Test
    void belongsToOneRunAtATime() throws Exception {
        AnswerFolder first = AnswerFolder.held(folder, ".json").orElseThrow();
        assertThat(AnswerFolder.held(folder, ".json")).isEmpty();
        first.close();

        AnswerFolder.held(folder, ".json").orElseThrow().close();
    }

    @Test
    void isMadeWhereThereIsNone() throws Exception {
        AnswerFolder.held(folder.resolve("a/b"), ".json").orElseThrow().close();

        assertThat(Files.isDirectory(folder.resolve("a/b"))).isTrue();
    }
}
