package evenrise.model.file;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import evenrise.model.ARandomProject;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class FileSchemasTest {
    private static final JsonSchema PROJECT = schema(Schemas.project());
    private static final JsonSchema PLAN = schema(Schemas.plan());

    @Test
    void acceptWhatIsWritten() {
        for (long seed = 0; seed < 60; seed++) {
            ARandomProject.Planted planted = ARandomProject.planted(seed);

            assertThat(errors(PROJECT, FileText.of(planted.project(), Format.JSON)))
                    .isEmpty();
            assertThat(errors(PLAN, FileText.of(planted.plan(), Format.JSON))).isEmpty();
        }
    }

    @Test
    void acceptWhatThePersonWrites() {
        assertThat(errors(PROJECT, Samples.PROJECT)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"settle_s\": 5|\"setle_s\": 5",
                "\"settle_s\": 5|\"settle_s\": \"5\"",
                "\"settle_s\": 5|\"settle_s\": null",
                "\"settle_s\": 5|\"settle_s\": -1",
                "\"settle_s\": 5|\"inrush_half_ms\": 0",
                "\"settle_s\": 5|\"poles\": 1.5",
                "\"settle_s\": 5|\"fixed\": {\"slot\": 0}",
                "\"settle_s\": 5|\"panels\": [\"P1\", \"P1\"]",
                "\"settle_s\": 5|\"curve\": \"E\"",
                "\"step_s\": [0.5]|\"step_s\": []",
                "\"step_s\": [0.5]|\"step_s\": [-1]",
                "\"running_a\": 2, |",
                "\"role\": \"processing\"|\"role\": \"Processing\"",
                "evenrise-project/1|evenrise-project/2",
                "\"id\": \"dsp\"|\"id\": \" \"",
                "\"settle_s\": 5|\"settle_s\": 5, \"x_rev\": 1",
            })
    void refuseWhatTheReaderRefuses(String piece, String other) {
        String text = Samples.PROJECT.replace(piece, other == null ? "" : other);

        assertThat(text).isNotEqualTo(Samples.PROJECT);
        assertThat(errors(PROJECT, text)).isNotEmpty();
        assertThat(Samples.read(text).value()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"\"$schema\": \"a.json\"", "\"notes\": [1, {\"a\": null}]", "\"x-rev\": 1"})
    void acceptFieldsOfOnesOwn(String field) {
        String text = Samples.PROJECT.replace("\"settle_s\": 5", "\"settle_s\": 5, " + field);

        assertThat(text).isNotEqualTo(Samples.PROJECT);
        assertThat(errors(PROJECT, text)).isEmpty();
    }

    private static JsonSchema schema(String text) {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(text);
    }

    private static Set<ValidationMessage> errors(JsonSchema schema, String text) {
        return schema.validate(text, InputFormat.JSON);
    }
}
