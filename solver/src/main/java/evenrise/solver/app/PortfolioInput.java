package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.file.PortfolioFile;
import evenrise.model.portfolio.Portfolio;
import evenrise.model.portfolio.Variant;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import java.util.stream.IntStream;

/**
 * What is planned: by a portfolio file, or by project files and folders alone.
 *
 * @param projects files by the names that results know them by
 */
record PortfolioInput(Map<String, Path> projects, List<Variant> variants, List<Integer> seeds, int moves) {
    private static final int HEAD = 4096;
    private static final String FORMAT = "evenrise-portfolio/";

    /** @throws JobFailed that lists what is wrong */
    static PortfolioInput of(PortfolioRequest request, Consumer<String> note) {
        List<Path> files =
                request.inputs().stream().filter(PortfolioInput::isPortfolio).toList();
        if (files.isEmpty()) {
            return of(request, PortfolioProjects.named(request.inputs(), request.folder()), List.of(Variant.AS_IS));
        }
        if (request.inputs().size() > 1) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "a portfolio file names its projects: '"
                            + Harmless.shown(files.get(0).toString()) + "' is to be given alone.");
        }
        Path file = files.get(0);
        Portfolio portfolio = Inputs.told(file.toString(), PortfolioFile.read(file), note)
                .value()
                .orElseThrow();
        Path folder = file.toAbsolutePath().getParent();
        List<Path> projects = portfolio.projects().stream()
                .map(each -> folder.resolve(Source.path(each)))
                .toList();
        PortfolioInput asked = of(request, PortfolioProjects.named(projects, request.folder()), portfolio.variants());
        return new PortfolioInput(
                asked.projects,
                asked.variants,
                request.seeds().isPresent() ? asked.seeds : portfolio.allSeeds(),
                request.moves().orElse(portfolio.moves()));
    }

    private static PortfolioInput of(PortfolioRequest request, Map<String, Path> projects, List<Variant> variants) {
        PortfolioRequest.Seeds seeds = request.seeds().orElse(new PortfolioRequest.Seeds(1, 1));
        return new PortfolioInput(
                projects,
                variants,
                IntStream.rangeClosed(seeds.first(), seeds.last()).boxed().toList(),
                request.moves().orElse(PortfolioRequest.USUAL_MOVES));
    }

    /** By what its beginning says; whether it is whole, its reader says. */
    private static boolean isPortfolio(Path file) {
        if (!Files.isRegularFile(file)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readNBytes(HEAD), StandardCharsets.UTF_8).contains(FORMAT);
        } catch (IOException e) {
            return false;
        }
    }
}
