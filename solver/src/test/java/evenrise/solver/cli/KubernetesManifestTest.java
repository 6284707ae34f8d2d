package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import evenrise.solver.app.Jobs;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import picocli.CommandLine;

/** docs/grid/kubernetes.yaml, as far as it can be held without a cluster: against itself and what the program takes. */
class KubernetesManifestTest {
    private static final Path FILE = Path.of("..", "docs", "grid", "kubernetes.yaml");

    private List<JsonNode> parts;

    @BeforeEach
    void isRead() throws IOException {
        YAMLMapper yaml = new YAMLMapper();
        parts = new ArrayList<>();
        yaml.readerFor(JsonNode.class).<JsonNode>readValues(FILE.toFile()).forEachRemaining(parts::add);
    }

    private JsonNode part(String kind) {
        return parts.stream()
                .filter(each -> each.path("kind").asText().equals(kind))
                .findFirst()
                .orElseThrow();
    }

    private static JsonNode pod(JsonNode part) {
        return part.at("/spec/template/spec");
    }

    private static List<String> arguments(JsonNode part) {
        List<String> all = new ArrayList<>();
        pod(part).at("/containers/0/args").forEach(each -> all.add(each.textValue()));
        return all;
    }

    private static CommandLine.ParseResult parsed(JsonNode part) {
        Terminal terminal = new Terminal(
                new ByteArrayInputStream(new byte[0]),
                new ByteArrayOutputStream(),
                new ByteArrayOutputStream(),
                StandardCharsets.UTF_8,
                false,
                false,
                false);
        return Evenrise.commandLine(terminal, new Jobs(), new Interruption())
                .parseArgs(arguments(part).toArray(String[]::new))
                .subcommand();
    }

    private static String value(JsonNode part, String option) {
        return parsed(part).matchedOption(option).stringValues().get(0);
    }

    @Test
    void hasNothingButWhatIsLookedAtHere() {
        assertThat(parts)
                .extracting(part -> part.path("kind").asText())
                .containsExactly("Service", "StatefulSet", "Job");
    }

    @Test
    void asksTheProgramForWhatItTakes() {
        assertThat(parsed(part("StatefulSet")).commandSpec().name()).isEqualTo("worker");
        assertThat(parsed(part("Job")).commandSpec().name()).isEqualTo("portfolio");
        assertThat(value(part("StatefulSet"), "--slots")).matches("[1-9][0-9]?");
    }

    @Test
    void joinsPodsThatThereAre() {
        JsonNode workers = part("StatefulSet");
        String service = part("Service").at("/metadata/name").asText();
        List<String> pods = IntStream.range(0, workers.at("/spec/replicas").asInt())
                .mapToObj(i -> workers.at("/metadata/name").asText() + "-" + i + "." + service)
                .toList();

        assertThat(workers.at("/spec/serviceName").asText()).isEqualTo(service);
        assertThat(part("Service").at("/spec/clusterIP").asText()).isEqualTo("None");
        assertThat(part("Service").at("/spec/selector"))
                .isEqualTo(workers.at("/spec/selector/matchLabels"))
                .isEqualTo(workers.at("/spec/template/metadata/labels"));
        assertThat(pods).containsAll(List.of(value(workers, "--join").split(",")));
        assertThat(value(part("Job"), "--grid")).isEqualTo(value(workers, "--join"));
    }

    @Test
    void showsItsKeysWhereTheyAreMounted() {
        for (JsonNode part : List.of(part("StatefulSet"), part("Job"))) {
            List<String> mounted = new ArrayList<>();
            List<String> names = new ArrayList<>();
            pod(part).at("/containers/0/volumeMounts").forEach(each -> {
                mounted.add(each.path("mountPath").asText());
                names.add(each.path("name").asText());
            });
            List<String> volumes = new ArrayList<>();
            pod(part)
                    .path("volumes")
                    .forEach(each -> volumes.add(each.path("name").asText()));

            assertThat(mounted).contains(value(part, "--keys"));
            assertThat(names).isEqualTo(volumes);
        }
    }

    @Test
    void keepsTheAnswersOfTheCommandOnAVolume() {
        assertThat(value(part("Job"), "-o")).startsWith("/store/");
        assertThat(pod(part("Job")).at("/containers/0/volumeMounts/1/mountPath").asText())
                .isEqualTo("/store");
        assertThat(pod(part("Job")).path("restartPolicy").asText()).isEqualTo("OnFailure");
    }
}
