package rosinbook.web;

import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.ServerConnector;
import rosinbook.limit.Limit;

/** What holds for every request, whatever it asks for: how large it may be, how long it may take, how many there may be. */
final class Doors {
    /** Connections that the operating system holds until they are looked at. */
    private static final int NEWCOMERS = 500;

    private Doors() {}

    static void settings(JavalinConfig config, Listening listening, Patience patience, Senders senders) {
        config.http.maxRequestSize = Limit.FORM_BYTES.most();
        config.jetty.multipartConfig.maxTotalRequestSize(Limit.RECORDING_BYTES.most(), SizeUnit.BYTES);
        Connections connections = new Connections(patience);
        Receivers receivers = new Receivers(patience.sending());
        receivers.setHandler(senders);
        connections.setHandler(receivers);
        config.jetty.modifyServer(server -> server.setHandler(connections));
        config.jetty.addConnector((server, http) -> {
            http.setRequestHeaderSize(Limit.HEAD_BYTES.count());
            ServerConnector connector = new ServerConnector(server, new HttpConnectionFactory(http));
            connector.setHost(listening.address());
            connector.setPort(listening.port());
            connector.setIdleTimeout(patience.silence().toMillis());
            connector.setAcceptQueueSize(NEWCOMERS);
            connector.addEventListener(connections);
            return connector;
        });
    }
}
