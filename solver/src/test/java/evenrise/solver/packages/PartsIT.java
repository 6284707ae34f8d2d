package evenrise.solver.packages;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** The parts by others: the ones that were chosen, each with its licence, each told in the bill of materials. */
class PartsIT {
    /** Set to write the list of hashes anew, after a version was raised on purpose. */
    private static final String REFRESH = "evenrise.refresh";

    private static final Path HASHES = Path.of("src/test/resources/evenrise/solver/packages/parts.sha256");
    private static final String LICENCES = "META-INF/licences/";

    @Nested
    class Hashes {
        @Test
        void ofEveryPartAreThoseOnTheList() throws IOException {
            Map<String, String> found = new TreeMap<>();
            for (Path jar : Parts.jars()) {
                found.put(jar.getFileName().toString(), Parts.sha256(jar));
            }
            Map<String, String> listed = listed();
            if (Boolean.getBoolean(REFRESH)) {
                listed.keySet().removeIf(name -> !isOfAnotherPlatform(name, found));
                listed.putAll(found);
                List<String> lines = new ArrayList<>();
                listed.forEach((name, hash) -> lines.add(hash + "  " + name));
                Files.write(HASHES, lines);
            }

            assertThat(listed).containsAllEntriesOf(found);
            listed.keySet().removeIf(name -> isOfAnotherPlatform(name, found));
            assertThat(listed).isEqualTo(found);
        }

        private boolean isOfAnotherPlatform(String name, Map<String, String> found) {
            return name.matches("ortools-(linux|darwin|win32)-.*") && !found.containsKey(name);
        }

        private Map<String, String> listed() throws IOException {
            Map<String, String> listed = new TreeMap<>();
            for (String line : Files.readAllLines(HASHES)) {
                String[] words = line.split(" +");
                listed.put(words[1], words[0]);
            }
            return listed;
        }
    }

    @Nested
    class Licences {
        @Test
        void ofEveryPartLieInTheJarThatHoldsIt() throws IOException {
            Set<String> program = Parts.names(Parts.PROGRAM);
            Set<String> proofs = Parts.names(Parts.proofs());
            Set<String> grid = Parts.names(Parts.GRID);
            for (Path jar : Parts.jars()) {
                String artifact = Parts.artifact(jar);
                if (artifact.startsWith("openhtmltopdf-")) {
                    assertThat(Parts.names(Parts.LIB.resolve(jar.getFileName())))
                            .as(artifact)
                            .contains("META-INF/LICENSE-LGPL-2.1.txt");
                } else if (artifact.matches("ortools-(linux|darwin|win32)-.*")) {
                    assertThat(proofs).as(artifact).contains(LICENCES + "natives/or-tools.txt");
                } else {
                    boolean isOfTheProofs = artifact.matches("ortools-java|protobuf-java");
                    boolean isOfTheGrid = artifact.matches("ignite-.*|cache-api");
                    assertThat(isOfTheProofs ? proofs : isOfTheGrid ? grid : program)
                            .as(artifact)
                            .anyMatch(name -> name.startsWith(LICENCES + artifact + "/"));
                }
            }
        }

        /** Each library, by what its file is called on Linux. */
        @Test
        void ofEveryNativeLibraryLieBesideIt() throws IOException {
            Set<String> names = Parts.names(Parts.proofs());
            StringBuilder told = new StringBuilder();
            for (String name : names) {
                if (name.startsWith(LICENCES + "natives/")) {
                    told.append(new String(Parts.entry(Parts.proofs(), name), StandardCharsets.UTF_8));
                }
            }
            List<String> libraries = names.stream()
                    .filter(name -> name.matches("ortools-[^/]*/lib.*"))
                    .map(name ->
                            name.replaceFirst("ortools-[^/]*/(lib[A-Za-z0-9_]*?)(\\.[0-9]|\\.so|\\.dylib).*", "$1"))
                    .map(name -> name.startsWith("libabsl_") ? "libabsl_*" : name)
                    .distinct()
                    .toList();
            assertThat(libraries).hasSizeGreaterThan(15);
            for (String library : libraries) {
                assertThat(told).as(library).containsPattern("[( ]" + library.replace("*", "\\*") + "[,) ]");
            }
        }

        @Test
        void thatAreToldByNameAreThere() throws IOException {
            for (Path jar : List.of(Parts.PROGRAM, Parts.proofs(), Parts.GRID)) {
                Set<String> names = Parts.names(jar);
                for (String name : names) {
                    if (name.startsWith(LICENCES) && name.endsWith(".txt")) {
                        String text = new String(Parts.entry(jar, name), StandardCharsets.UTF_8);
                        java.util.regex.Matcher pointer = java.util.regex.Pattern.compile(
                                        "META-INF/licences/texts/[A-Za-z0-9.-]+\\.txt")
                                .matcher(text);
                        while (pointer.find()) {
                            assertThat(names).as(name).contains(pointer.group());
                        }
                    }
                }
            }
        }

        /** Whoever gets such a class may put another build of it in its place; inside another jar that is hard. */
        @Test
        void leaveNoClassUnderTheLgplInsideOurJars() throws IOException {
            Set<String> ours = Parts.names(Parts.PROGRAM);
            ours.addAll(Parts.names(Parts.proofs()));
            ours.addAll(Parts.names(Parts.GRID));
            int lesser = 0;
            for (JsonNode component : components()) {
                String licences = component.path("licenses").toString();
                if (licences.contains("LGPL") || licences.contains("Lesser")) {
                    lesser++;
                    Path jar = jar(component);
                    assertThat(Parts.names(jar).stream().filter(name -> name.endsWith(".class") && ours.contains(name)))
                            .as(jar.toString())
                            .isEmpty();
                }
            }
            assertThat(lesser).as("the print engine at least").isGreaterThanOrEqualTo(4);
        }
    }

    @Nested
    class BillOfMaterials {
        @Test
        void listsEveryPartWithItsHash() throws IOException {
            Map<String, String> told = new TreeMap<>();
            for (JsonNode component : components()) {
                if (!component.path("group").asText().equals("evenrise")) {
                    told.put(jar(component).getFileName().toString(), hash(component));
                }
            }
            Map<String, String> found = new TreeMap<>();
            for (Path jar : Parts.jars()) {
                found.put(jar.getFileName().toString(), Parts.sha256(jar));
            }

            assertThat(told).isEqualTo(found);
        }

        private String hash(JsonNode component) {
            return StreamSupport.stream(component.path("hashes").spliterator(), false)
                    .filter(hash -> hash.path("alg").asText().equals("SHA-256"))
                    .map(hash -> hash.path("content").asText())
                    .findFirst()
                    .orElseThrow();
        }
    }

    private static JsonNode components() throws IOException {
        JsonNode bill = new ObjectMapper().readTree(Parts.entry(Parts.PROGRAM, "META-INF/sbom/evenrise.cdx.json"));
        assertThat(bill.path("bomFormat").asText()).isEqualTo("CycloneDX");
        return bill.path("components");
    }

    private static Path jar(JsonNode component) throws IOException {
        String name = component.path("name").asText() + "-"
                + component.path("version").asText() + ".jar";
        return Parts.jars().stream()
                .filter(jar -> jar.getFileName().toString().equals(name))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " is told, and not on the class path"));
    }
}
