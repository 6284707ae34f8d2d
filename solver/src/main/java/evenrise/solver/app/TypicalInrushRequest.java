package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * What is usual for the gear of loads that state no inrush.
 *
 * @param into where the project with these values is written, each marked as guessed
 * @since 0.1.0
 */
public record TypicalInrushRequest(Source project, Source plan, Optional<Path> into) {}
