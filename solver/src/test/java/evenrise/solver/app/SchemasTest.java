package evenrise.solver.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SchemasTest {
    private static final Path FOLDER = Path.of("..", "docs", "schema");

    @ParameterizedTest
    @EnumSource(FileSchema.class)
    void areKeptAsTheyAreGenerated(FileSchema schema) throws IOException {
        Path kept = FOLDER.resolve(name(schema));
        if (Boolean.getBoolean("refreshSchemas")) {
            Files.createDirectories(FOLDER);
            Files.writeString(kept, schema.text());
        }

        assertThat(kept)
                .as("%s; DEVELOPERS.md says how docs/schema is written anew", kept)
                .hasContent(schema.text());
    }

    @Test
    void areNoOthers() throws IOException {
        try (Stream<Path> files = Files.list(FOLDER)) {
            assertThat(files.map(file -> file.getFileName().toString()))
                    .containsExactlyInAnyOrderElementsOf(Stream.of(FileSchema.values())
                            .map(SchemasTest::name)
                            .collect(Collectors.toList()));
        }
    }

    private static String name(FileSchema schema) {
        return schema + (schema == FileSchema.MEASURED ? ".csv-metadata.json" : ".schema.json");
    }
}
