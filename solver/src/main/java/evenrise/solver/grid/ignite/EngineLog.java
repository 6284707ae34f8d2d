package evenrise.solver.grid.ignite;

import evenrise.solver.grid.GridLog;
import evenrise.solver.grid.GridUnavailable;
import java.io.IOException;
import java.util.Optional;
import java.util.logging.FileHandler;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.logging.SimpleFormatter;
import org.apache.ignite.IgniteLogger;

/** What the engine says, in a file or nowhere; never on a screen. */
final class EngineLog implements IgniteLogger, AutoCloseable {
    private final Logger logger;
    private final Optional<FileHandler> handler;

    private EngineLog(Logger logger, Optional<FileHandler> handler) {
        this.logger = logger;
        this.handler = handler;
    }

    static EngineLog of(Optional<GridLog> log) {
        Logger logger = Logger.getAnonymousLogger();
        logger.setUseParentHandlers(false);
        logger.setLevel(log.map(each -> level(each.level())).orElse(Level.OFF));
        Optional<FileHandler> handler = log.map(EngineLog::handler);
        handler.ifPresent(logger::addHandler);
        return new EngineLog(logger, handler);
    }

    private static FileHandler handler(GridLog log) {
        try {
            FileHandler handler = new FileHandler(log.file().toString().replace("%", "%%"), true);
            handler.setFormatter(new SimpleFormatter());
            handler.setLevel(Level.ALL);
            return handler;
        } catch (IOException e) {
            throw new GridUnavailable("the log '" + log.file() + "' cannot be written: " + e.getMessage() + ".", e);
        }
    }

    private static Level level(GridLog.Level level) {
        return switch (level) {
            case ERROR -> Level.SEVERE;
            case WARNING -> Level.WARNING;
            case INFO -> Level.INFO;
            case DEBUG -> Level.FINE;
        };
    }

    @Override
    public IgniteLogger getLogger(Object category) {
        return this;
    }

    @Override
    public void trace(String message) {
        logger.log(Level.FINER, message);
    }

    @Override
    public void debug(String message) {
        logger.log(Level.FINE, message);
    }

    @Override
    public void info(String message) {
        logger.log(Level.INFO, message);
    }

    @Override
    public void warning(String message, Throwable why) {
        logger.log(Level.WARNING, message, why);
    }

    @Override
    public void error(String message, Throwable why) {
        logger.log(Level.SEVERE, message, why);
    }

    @Override
    public boolean isTraceEnabled() {
        return logger.isLoggable(Level.FINER);
    }

    @Override
    public boolean isDebugEnabled() {
        return logger.isLoggable(Level.FINE);
    }

    @Override
    public boolean isInfoEnabled() {
        return logger.isLoggable(Level.INFO);
    }

    /** Where it is quiet, the engine prints to the screen instead. */
    @Override
    public boolean isQuiet() {
        return false;
    }

    @Override
    public String fileName() {
        return null;
    }

    @Override
    public void close() {
        handler.ifPresent(FileHandler::close);
    }
}
