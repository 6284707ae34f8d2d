package evenrise.solver.grid.ignite;

import evenrise.solver.grid.GridEngine.WorkerPost;
import evenrise.solver.grid.GridHosts;
import evenrise.solver.grid.GridSite;
import evenrise.solver.grid.GridUnavailable;
import evenrise.solver.grid.GridWork;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.DatagramSocket;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.apache.ignite.Ignite;
import org.apache.ignite.IgniteException;
import org.apache.ignite.Ignition;
import org.apache.ignite.configuration.DataRegionConfiguration;
import org.apache.ignite.configuration.DataStorageConfiguration;
import org.apache.ignite.configuration.IgniteConfiguration;
import org.apache.ignite.events.EventType;
import org.apache.ignite.failure.FailureHandler;
import org.apache.ignite.plugin.segmentation.SegmentationPolicy;
import org.apache.ignite.spi.communication.tcp.TcpCommunicationSpi;
import org.apache.ignite.spi.discovery.tcp.TcpDiscoverySpi;
import org.apache.ignite.spi.discovery.tcp.ipfinder.vm.TcpDiscoveryVmIpFinder;
import org.apache.ignite.spi.failover.never.NeverFailoverSpi;

/**
 * One process among those that take part: finds the others at named places, and listens nowhere but to them. No multicast,
 * no way in for other clients, no code from others, no word to anybody outside.
 */
final class EngineNode implements AutoCloseable {
    /** Under which a worker says how many jobs it runs side by side; who drives does not say it. */
    static final String SLOTS = "evenrise.slots";

    private static final int PORTS_BETWEEN = 100;
    private static final int PORTS = GridHosts.USUAL_PORTS;
    private static final long REGION_BYTES = 32L << 20;
    private static final long FAILURE_MILLIS = 10_000;
    /** Of a driver: an engine that starts on a busy machine takes long; where nobody listens it does not start at all. */
    private static final long START_MILLIS = 60_000;

    private static final int FEW_THREADS = 2;

    static {
        System.setProperty("IGNITE_QUIET", "false");
        System.setProperty("IGNITE_NO_ASCII", "true");
        System.setProperty("IGNITE_UPDATE_NOTIFIER", "false");
        System.setProperty("IGNITE_NO_SHUTDOWN_HOOK", "true");
        System.setProperty("IGNITE_PERFORMANCE_SUGGESTIONS_DISABLED", "true");
    }

    private final Ignite ignite;
    private final EngineLog log;
    private final Path scratch;

    private EngineNode(Ignite ignite, EngineLog log, Path scratch) {
        this.ignite = ignite;
        this.log = log;
        this.scratch = scratch;
    }

    /** What a worker and a driver differ in. */
    record Role(int firstPort, int ports, long patienceMillis, int slots, Optional<GridWork> work) {
        static Role worker(WorkerPost post, GridWork work) {
            return new Role(
                    post.port() == 0 ? GridHosts.USUAL_PORT : post.port(),
                    post.port() == 0 ? PORTS : 1,
                    0,
                    post.slots(),
                    Optional.of(work));
        }

        /** Its ports are none that are joined: it begins no ring of its own, and finds the workers' or none. */
        static Role driver(long patienceMillis) {
            return new Role(GridHosts.USUAL_PORT + 2 * PORTS_BETWEEN, PORTS, patienceMillis, 1, Optional.empty());
        }
    }

    /** @throws GridUnavailable that says why it cannot join */
    static EngineNode joined(GridSite site, Role role, FailureHandler failures) {
        List<String> addresses =
                role.work().isPresent() ? site.hosts().addresses() : OpenDoors.of(site, role.patienceMillis());
        EngineLog log = EngineLog.of(site.log());
        Path scratch = scratch();
        try {
            IgniteConfiguration configuration =
                    configuration(site, role, log, scratch, failures).setDiscoverySpi(discovery(role, addresses));
            Ignite ignite =
                    Alarm.within(role.work().isPresent() ? 0 : START_MILLIS, () -> Ignition.start(configuration));
            return new EngineNode(ignite, log, scratch);
        } catch (IgniteException e) {
            delete(scratch);
            log.close();
            throw JoinFailure.of(site, e);
        }
    }

    Ignite ignite() {
        return ignite;
    }

    /** At which others find it. */
    int port() {
        return ((TcpDiscoverySpi) ignite.configuration().getDiscoverySpi()).getLocalPort();
    }

    /** Running jobs are stopped. */
    @Override
    public void close() {
        Ignition.stop(ignite.name(), true);
        delete(scratch);
        log.close();
    }

    private static IgniteConfiguration configuration(
            GridSite site, Role role, EngineLog log, Path scratch, FailureHandler failures) {
        IgniteConfiguration configuration = new IgniteConfiguration()
                .setIgniteInstanceName("evenrise-" + UUID.randomUUID())
                .setConsistentId(UUID.randomUUID().toString())
                .setGridLogger(log)
                .setWorkDirectory(scratch.toString())
                .setLocalHost(localAddress(site))
                .setPeerClassLoadingEnabled(false)
                .setMetricsLogFrequency(0)
                .setFailureDetectionTimeout(FAILURE_MILLIS)
                .setSegmentationPolicy(SegmentationPolicy.STOP)
                .setFailureHandler(failures)
                .setFailoverSpi(new NeverFailoverSpi())
                .setPluginProviders(new SameSoftware(site.software(), role.work()))
                .setUserAttributes(attributes(site, role))
                .setIncludeEventTypes(EventType.EVT_NODE_JOINED, EventType.EVT_NODE_LEFT, EventType.EVT_NODE_FAILED)
                .setDataStorageConfiguration(new DataStorageConfiguration()
                        .setDefaultDataRegionConfiguration(new DataRegionConfiguration()
                                .setInitialSize(REGION_BYTES)
                                .setMaxSize(REGION_BYTES)));
        configuration.setConnectorConfiguration(null);
        configuration.setClientConnectorConfiguration(null);
        site.keys().ifPresent(keys -> configuration.setSslContextFactory(keys::context));
        threads(configuration, role.slots());
        configuration.setDiscoverySpi(new TcpDiscoverySpi()
                .setIpFinder(
                        new TcpDiscoveryVmIpFinder().setAddresses(site.hosts().addresses()))
                .setJoinTimeout(role.patienceMillis())
                .setLocalPort(role.firstPort())
                .setLocalPortRange(role.ports() - 1));
        configuration.setCommunicationSpi(new TcpCommunicationSpi()
                .setLocalPort(role.firstPort() + PORTS_BETWEEN)
                .setLocalPortRange(PORTS));
        return configuration;
    }

    private static TcpDiscoverySpi discovery(Role role, List<String> addresses) {
        return new TcpDiscoverySpi()
                .setIpFinder(new TcpDiscoveryVmIpFinder().setAddresses(addresses))
                .setJoinTimeout(role.patienceMillis())
                .setLocalPort(role.firstPort())
                .setLocalPortRange(role.ports() - 1);
    }

    private static Map<String, Object> attributes(GridSite site, Role role) {
        Map<String, Object> attributes = new HashMap<>();
        attributes.put(SameSoftware.ATTRIBUTE, site.software());
        role.work().ifPresent(any -> attributes.put(SLOTS, role.slots()));
        return attributes;
    }

    /** A thread for each job, and few for all else: there is no data to be kept. */
    private static void threads(IgniteConfiguration configuration, int slots) {
        configuration
                .setPublicThreadPoolSize(slots)
                .setSystemThreadPoolSize(FEW_THREADS)
                .setStripedPoolSize(FEW_THREADS)
                .setServiceThreadPoolSize(1)
                .setManagementThreadPoolSize(1)
                .setDataStreamerThreadPoolSize(1)
                .setQueryThreadPoolSize(1)
                .setUtilityCachePoolSize(1)
                .setRebalanceThreadPoolSize(1)
                .setAsyncCallbackPoolSize(1)
                .setBuildIndexThreadPoolSize(1)
                .setSnapshotThreadPoolSize(1)
                .setPeerClassLoadingThreadPoolSize(1);
    }

    /** The address from which the first host is reached: others are not listened to at any other. No packet is sent. */
    private static String localAddress(GridSite site) {
        if (site.hosts().areLoopback()) {
            return InetAddress.getLoopbackAddress().getHostAddress();
        }
        try (DatagramSocket socket = new DatagramSocket()) {
            socket.connect(new InetSocketAddress(site.hosts().first(), GridHosts.USUAL_PORT));
            return socket.getLocalAddress().getHostAddress();
        } catch (IOException | UncheckedIOException | IllegalArgumentException e) {
            throw new GridUnavailable("'" + site.hosts().first() + "' is not known here, or not reached.", e);
        }
    }

    private static Path scratch() {
        try {
            return Files.createTempDirectory("evenrise-grid-");
        } catch (IOException e) {
            throw new GridUnavailable("no folder for temporary files can be made: " + e.getMessage() + ".", e);
        }
    }

    private static void delete(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.deleteIfExists(each);
            }
        } catch (IOException e) {
            // What stays is small, and in a folder for such things.
        }
    }
}
