<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<!-- Kept by hand: words that the program reads from tables, so that lupdate does not see them. The
     labels of forms/tally.form.json, the names of the tally sets and the species. The Spanish species
     names are from memory: names in common use, not read in a list of plant names; where none is
     common, our own rendering of the English one. To be read by a Spanish-speaking forester. -->
<TS version="2.1" language="es" sourcelanguage="en_US">
<context>
    <name>Form</name>
    <message>
        <source>Acorns and wildlife food</source>
        <translation>Bellotas y comida para fauna</translation>
    </message>
    <message>
        <source>Timber</source>
        <translation>Madera</translation>
    </message>
    <message>
        <source>Beauty</source>
        <translation>Belleza</translation>
    </message>
    <message>
        <source>A bit of each</source>
        <translation>Un poco de todo</translation>
    </message>
    <message>
        <source>Measure</source>
        <translation>Medir</translation>
    </message>
    <message>
        <source>Each tree with its size, logs and height where wanted</source>
        <translation>Cada árbol con su tamaño, y trozas y altura donde se piden</translation>
    </message>
    <message>
        <source>Count</source>
        <translation>Contar</translation>
    </message>
    <message>
        <source>How many trees of which species are in; no more is needed</source>
        <translation>Cuántos árboles de qué especie entran; no hace falta más</translation>
    </message>
    <message>
        <source>To do</source>
        <translation>Por hacer</translation>
    </message>
    <message>
        <source>Laid out, nobody was there yet</source>
        <translation>Trazada, nadie ha ido</translation>
    </message>
    <message>
        <source>Measured</source>
        <translation>Medida</translation>
    </message>
    <message>
        <source>Visited, with at least one tree</source>
        <translation>Visitada, con un árbol o más</translation>
    </message>
    <message>
        <source>Empty</source>
        <translation>Vacía</translation>
    </message>
    <message>
        <source>Visited, no tree to tally; counts as zero</source>
        <translation>Visitada, sin árboles; cuenta como cero</translation>
    </message>
    <message>
        <source>Skipped</source>
        <translation>Saltada</translation>
    </message>
    <message>
        <source>Not visited, for a reason; not in the sample</source>
        <translation>No visitada, por una razón; fuera de la muestra</translation>
    </message>
    <message>
        <source>Live</source>
        <translation>Vivo</translation>
    </message>
    <message>
        <source>Dead</source>
        <translation>Muerto</translation>
    </message>
    <message>
        <source>Open-grown</source>
        <translation>Aislado</translation>
    </message>
    <message>
        <source>Full light from above and on all sides for most of its life</source>
        <translation>Luz plena de arriba y de todos los lados casi toda su vida</translation>
    </message>
    <message>
        <source>Dominant</source>
        <translation>Dominante</translation>
    </message>
    <message>
        <source>Above the main canopy: light from above and partly from the sides</source>
        <translation>Sobre el dosel: luz de arriba y algo de los lados</translation>
    </message>
    <message>
        <source>Codominant</source>
        <translation>Codominante</translation>
    </message>
    <message>
        <source>In the main canopy: light from above, little from the sides</source>
        <translation>En el dosel: luz de arriba, poca de los lados</translation>
    </message>
    <message>
        <source>Intermediate</source>
        <translation>Intermedio</translation>
    </message>
    <message>
        <source>Reaches into the main canopy: a little light from straight above</source>
        <translation>Llega al dosel: un poco de luz de arriba</translation>
    </message>
    <message>
        <source>White oak group</source>
        <translation>Robles blancos</translation>
    </message>
    <message>
        <source>Red oak group</source>
        <translation>Robles rojos</translation>
    </message>
    <message>
        <source>Poor</source>
        <translation>Mala</translation>
    </message>
    <message>
        <source>Fair</source>
        <translation>Regular</translation>
    </message>
    <message>
        <source>Good</source>
        <translation>Buena</translation>
    </message>
    <message>
        <source>Bumper crop</source>
        <translation>Cosecha abundante</translation>
    </message>
    <message>
        <source>Overtopped</source>
        <translation>Suprimido</translation>
    </message>
    <message>
        <source>Wholly below the main canopy: no direct light</source>
        <translation>Todo bajo el dosel: sin luz directa</translation>
    </message>
    <message>
        <source>Under 1 ft</source>
        <translation>Menos de 1 ft</translation>
    </message>
    <message>
        <source>1 to 4.5 ft</source>
        <translation>1 a 4.5 ft</translation>
    </message>
    <message>
        <source>Over 4.5 ft</source>
        <translation>Más de 4.5 ft</translation>
    </message>
    <message>
        <source>Crop tree</source>
        <translation>Árbol de futuro</translation>
    </message>
    <message>
        <source>The tree this card is about</source>
        <translation>El árbol de esta tarjeta</translation>
    </message>
    <message>
        <source>Neighbour</source>
        <translation>Vecino</translation>
    </message>
    <message>
        <source>A tree that stands around it</source>
        <translation>Un árbol a su alrededor</translation>
    </message>
    <message>
        <source>Open side</source>
        <translation>Lado libre</translation>
    </message>
    <message>
        <source>Somebody looked up at this side and nothing stands there</source>
        <translation>Alguien miró arriba en este lado y no hay nada</translation>
    </message>
    <message>
        <source>North</source>
        <translation>Norte</translation>
    </message>
    <message>
        <source>East</source>
        <translation>Este</translation>
    </message>
    <message>
        <source>South</source>
        <translation>Sur</translation>
    </message>
    <message>
        <source>West</source>
        <translation>Oeste</translation>
    </message>
    <message>
        <source>Touches</source>
        <translation>Toca</translation>
    </message>
    <message>
        <source>Crowns touch, or the gap is under two feet</source>
        <translation>Las copas se tocan, o el hueco es menor de dos pies</translation>
    </message>
    <message>
        <source>Reaches over</source>
        <translation>Pasa por encima</translation>
    </message>
    <message>
        <source>Its crown reaches over the crop crown</source>
        <translation>Su copa pasa sobre la copa del árbol de futuro</translation>
    </message>
    <message>
        <source>Stays below</source>
        <translation>Queda debajo</translation>
    </message>
    <message>
        <source>Its crown stays under the crop crown</source>
        <translation>Su copa queda bajo la copa del árbol de futuro</translation>
    </message>
    <message>
        <source>Clear gap</source>
        <translation>Hueco libre</translation>
    </message>
    <message>
        <source>A clear gap between the crowns</source>
        <translation>Un hueco libre entre las copas</translation>
    </message>
    <message>
        <source>Not looked</source>
        <translation>Sin mirar</translation>
    </message>
    <message>
        <source>Nobody looked up: to be judged by size and distance</source>
        <translation>Nadie miró arriba: se juzga por tamaño y distancia</translation>
    </message>
    <message>
        <source>Overhead</source>
        <translation>Arriba</translation>
    </message>
    <message>
        <source>Stem and roots</source>
        <translation>Tronco y raíces</translation>
    </message>
    <message>
        <source>Wildlife</source>
        <translation>Fauna</translation>
    </message>
    <message>
        <source>Place</source>
        <translation>Lugar</translation>
    </message>
    <message>
        <source>Pests</source>
        <translation>Plagas</translation>
    </message>
    <message>
        <source>Form</source>
        <translation>Forma</translation>
    </message>
    <message>
        <source>Broken or hanging top</source>
        <translation>Punta rota o colgada</translation>
    </message>
    <message>
        <source>Limb broken loose</source>
        <translation>Rama quebrada suelta</translation>
    </message>
    <message>
        <source>Dead limbs, 3 in or more</source>
        <translation>Ramas muertas de 3 in o más</translation>
    </message>
    <message>
        <source>Another tree hangs in it</source>
        <translation>Otro árbol colgado en él</translation>
    </message>
    <message>
        <source>Vines in this crown</source>
        <translation>Bejucos en esta copa</translation>
    </message>
    <message>
        <source>Vines across to another crown</source>
        <translation>Bejucos hasta otra copa</translation>
    </message>
    <message>
        <source>Root plate lifted or roots cut</source>
        <translation>Raíces levantadas o cortadas</translation>
    </message>
    <message>
        <source>Leans more than 15 degrees</source>
        <translation>Inclinado más de 15 grados</translation>
    </message>
    <message>
        <source>Leans 10 to 15 degrees</source>
        <translation>Inclinado de 10 a 15 grados</translation>
    </message>
    <message>
        <source>Open crack or split</source>
        <translation>Grieta o rajadura abierta</translation>
    </message>
    <message>
        <source>Lightning or fire seam</source>
        <translation>Cicatriz de rayo o fuego</translation>
    </message>
    <message>
        <source>Hollow within 6 ft of the ground</source>
        <translation>Hueco a menos de 6 ft del suelo</translation>
    </message>
    <message>
        <source>Hollow above 6 ft</source>
        <translation>Hueco arriba de 6 ft</translation>
    </message>
    <message>
        <source>Conk: decay inside</source>
        <translation>Hongo en repisa: podrido por dentro</translation>
    </message>
    <message>
        <source>Canker or open scar</source>
        <translation>Cancro o herida abierta</translation>
    </message>
    <message>
        <source>Wound over a third of the base</source>
        <translation>Herida en más de un tercio de la base</translation>
    </message>
    <message>
        <source>Wire or nails in the stem</source>
        <translation>Alambre o clavos en el tronco</translation>
    </message>
    <message>
        <source>Nest in use</source>
        <translation>Nido en uso</translation>
    </message>
    <message>
        <source>Den or usable cavity</source>
        <translation>Madriguera o hueco útil</translation>
    </message>
    <message>
        <source>Loose bark plates for bats</source>
        <translation>Corteza suelta para murciélagos</translation>
    </message>
    <message>
        <source>Old or outstanding tree to keep</source>
        <translation>Árbol viejo o notable que se conserva</translation>
    </message>
    <message>
        <source>Overhead line within two tree lengths</source>
        <translation>Cable aéreo a menos de dos largos de árbol</translation>
    </message>
    <message>
        <source>Road or trail within two tree lengths</source>
        <translation>Camino o sendero a menos de dos largos de árbol</translation>
    </message>
    <message>
        <source>Building or blind within two tree lengths</source>
        <translation>Edificio o puesto de caza a menos de dos largos de árbol</translation>
    </message>
    <message>
        <source>On a property line, or blazed as one</source>
        <translation>En el lindero, o marcado como lindero</translation>
    </message>
    <message>
        <source>On the bank of a stream</source>
        <translation>En la orilla de un arroyo</translation>
    </message>
    <message>
        <source>Oak with summer wilt or bleeding</source>
        <translation>Roble marchito en verano o que sangra</translation>
    </message>
    <message>
        <source>Bark flecks or borer holes</source>
        <translation>Corteza picada o hoyos de barrenador</translation>
    </message>
    <message>
        <source>Beech bark disease</source>
        <translation>Enfermedad de la corteza del haya</translation>
    </message>
    <message>
        <source>Tight fork with bark between</source>
        <translation>Horqueta cerrada con corteza dentro</translation>
    </message>
    <message>
        <source>Wide fork</source>
        <translation>Horqueta abierta</translation>
    </message>
    <message>
        <source>Shares its base with other stems</source>
        <translation>Comparte la base con otros tallos</translation>
    </message>
    <message>
        <source>Sprout joined to its old stump over 6 in up</source>
        <translation>Rebrote unido al tocón viejo a más de 6 in</translation>
    </message>
    <message>
        <source>New branches on the butt log</source>
        <translation>Ramas nuevas en la troza basal</translation>
    </message>
    <message>
        <source>Crooked: no straight log</source>
        <translation>Torcido: sin troza recta</translation>
    </message>
    <message>
        <source>Tract</source>
        <translation>Predio</translation>
    </message>
    <message>
        <source>What the owner calls it</source>
        <translation>Como lo llama el dueño</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Estado</translation>
    </message>
    <message>
        <source>Two letters; the dates of oak wilt and bats go by it</source>
        <translation>Dos letras; de él dependen las fechas de marchitez del roble y murciélagos</translation>
    </message>
    <message>
        <source>County</source>
        <translation>Condado</translation>
    </message>
    <message>
        <source>County, as an emergency call asks for it</source>
        <translation>Condado, como lo pide una llamada de emergencia</translation>
    </message>
    <message>
        <source>Who answers for the work</source>
        <translation>Responsable del trabajo</translation>
    </message>
    <message>
        <source>Name and phone number</source>
        <translation>Nombre y teléfono</translation>
    </message>
    <message>
        <source>How to get here</source>
        <translation>Cómo llegar</translation>
    </message>
    <message>
        <source>Road, gate and nearest crossroad, as you would tell a driver</source>
        <translation>Camino, portón y cruce más cercano, como a un chofer</translation>
    </message>
    <message>
        <source>Where an ambulance is met</source>
        <translation>Dónde se espera la ambulancia</translation>
    </message>
    <message>
        <source>A place that a driver who was never here can find</source>
        <translation>Un lugar fácil de hallar para quien nunca vino</translation>
    </message>
    <message>
        <source>Where a phone works</source>
        <translation>Dónde hay señal</translation>
    </message>
    <message>
        <source>The nearest spot with a signal</source>
        <translation>El punto más cercano con señal</translation>
    </message>
    <message>
        <source>Landing, latitude</source>
        <translation>Patio de acopio, latitud</translation>
    </message>
    <message>
        <source>Landing, longitude</source>
        <translation>Patio de acopio, longitud</translation>
    </message>
    <message>
        <source>Decimal degrees, north is positive</source>
        <translation>Grados decimales, el norte es positivo</translation>
    </message>
    <message>
        <source>Decimal degrees, west is negative</source>
        <translation>Grados decimales, el oeste es negativo</translation>
    </message>
    <message>
        <source>Invented data</source>
        <translation>Datos inventados</translation>
    </message>
    <message>
        <source>Yes: every page says that nothing here is real</source>
        <translation>Sí: cada página dice que nada aquí es real</translation>
    </message>
    <message>
        <source>Lake States oak and aspen woods</source>
        <translation>Robles y álamos de los Grandes Lagos</translation>
    </message>
    <message>
        <source>Central oak-hickory uplands</source>
        <translation>Lomas centrales de roble y nogal</translation>
    </message>
    <message>
        <source>Appalachian mixed-oak slopes</source>
        <translation>Laderas de roble de los Apalaches</translation>
    </message>
    <message>
        <source>Northeast oak to northern hardwood transition</source>
        <translation>Noreste: de roble a maderas duras</translation>
    </message>
    <message>
        <source>Bottomland and flatwoods oak</source>
        <translation>Robles de bajos y llanos</translation>
    </message>
    <message>
        <source>Driftless hills oak</source>
        <translation>Robles de las lomas Driftless</translation>
    </message>
    <message>
        <source>Tree</source>
        <translation>Árbol</translation>
    </message>
    <message>
        <source>Crown class</source>
        <translation>Clase de copa</translation>
    </message>
    <message>
        <source>Found as marked</source>
        <translation>Como estaba marcado</translation>
    </message>
    <message>
        <source>Cut, or killed standing, as the list says</source>
        <translation>Cortado, o muerto en pie, como dice la lista</translation>
    </message>
    <message>
        <source>Still standing</source>
        <translation>Sigue en pie</translation>
    </message>
    <message>
        <source>On the list, and nothing was done to it</source>
        <translation>En la lista, y no se le hizo nada</translation>
    </message>
    <message>
        <source>Hung up</source>
        <translation>Enganchado</translation>
    </message>
    <message>
        <source>Cut, and lodged in another tree or on its hinge: nobody goes under it</source>
        <translation>Cortado, y trabado en otro árbol o en su bisagra: nadie pasa debajo</translation>
    </message>
    <message>
        <source>Cut, not marked</source>
        <translation>Cortado sin marca</translation>
    </message>
    <message>
        <source>Cut, and not on the list</source>
        <translation>Cortado, y no está en la lista</translation>
    </message>
    <message>
        <source>Hurt leave tree</source>
        <translation>Árbol que queda, herido</translation>
    </message>
    <message>
        <source>To be left, and wounded</source>
        <translation>Debía quedar, y está herido</translation>
    </message>
    <message>
        <source>Small</source>
        <translation>Pequeña</translation>
    </message>
    <message>
        <source>Bare wood up to the size of a hand: 10 square inches</source>
        <translation>Madera desnuda hasta el tamaño de una mano: 10 pulgadas cuadradas</translation>
    </message>
    <message>
        <source>Medium</source>
        <translation>Mediana</translation>
    </message>
    <message>
        <source>More bare wood than that, and not large</source>
        <translation>Más madera desnuda que eso, sin ser grande</translation>
    </message>
    <message>
        <source>Large</source>
        <translation>Grande</translation>
    </message>
    <message>
        <source>100 square inches of bare wood or more, or half of the girth</source>
        <translation>100 pulgadas cuadradas de madera desnuda o más, o la mitad del contorno</translation>
    </message>
    <message>
        <source>Broken</source>
        <translation>Quebrado</translation>
    </message>
    <message>
        <source>Snapped, bent over or uprooted</source>
        <translation>Partido, doblado o arrancado de raíz</translation>
    </message>
    <message>
        <source>Stem</source>
        <translation>Tronco</translation>
    </message>
    <message>
        <source>Roots</source>
        <translation>Raíces</translation>
    </message>
    <message>
        <source>Crown</source>
        <translation>Copa</translation>
    </message>
    <message>
        <source>Stump check</source>
        <translation>Revisión de tocones</translation>
    </message>
    <message>
        <source>What was found after the cut; one row for each stump, tree still standing or hurt tree</source>
        <translation>Lo que se encontró después de la corta; una fila por tocón, árbol en pie o árbol herido</translation>
    </message>
    <message>
        <source>What was found</source>
        <translation>Qué se encontró</translation>
    </message>
    <message>
        <source>Stump diameter over bark</source>
        <translation>Diámetro del tocón con corteza</translation>
    </message>
    <message>
        <source>Stump diameter under bark</source>
        <translation>Diámetro del tocón sin corteza</translation>
    </message>
    <message>
        <source>Stump height</source>
        <translation>Altura del tocón</translation>
    </message>
    <message>
        <source>Worst wound</source>
        <translation>Peor herida</translation>
    </message>
    <message>
        <source>Where it is hurt</source>
        <translation>Dónde está herido</translation>
    </message>
</context>
<context>
    <name>Species</name>
    <message>
        <source>white oak</source>
        <translation>roble blanco</translation>
    </message>
    <message>
        <source>swamp white oak</source>
        <translation>roble blanco de pantano</translation>
    </message>
    <message>
        <source>bur oak</source>
        <translation>roble de bellota grande</translation>
    </message>
    <message>
        <source>chinkapin oak</source>
        <translation>roble chinkapin</translation>
    </message>
    <message>
        <source>chestnut oak</source>
        <translation>roble castaño</translation>
    </message>
    <message>
        <source>post oak</source>
        <translation>roble de poste</translation>
    </message>
    <message>
        <source>overcup oak</source>
        <translation>roble lira</translation>
    </message>
    <message>
        <source>swamp chestnut oak</source>
        <translation>roble castaño de pantano</translation>
    </message>
    <message>
        <source>white oak group (species not told)</source>
        <translation>robles blancos (especie no dicha)</translation>
    </message>
    <message>
        <source>northern red oak</source>
        <translation>roble rojo</translation>
    </message>
    <message>
        <source>black oak</source>
        <translation>roble negro</translation>
    </message>
    <message>
        <source>scarlet oak</source>
        <translation>roble escarlata</translation>
    </message>
    <message>
        <source>northern pin oak</source>
        <translation>roble palustre del norte</translation>
    </message>
    <message>
        <source>pin oak</source>
        <translation>roble palustre</translation>
    </message>
    <message>
        <source>southern red oak</source>
        <translation>roble rojo del sur</translation>
    </message>
    <message>
        <source>cherrybark oak</source>
        <translation>roble cherrybark</translation>
    </message>
    <message>
        <source>Shumard oak</source>
        <translation>roble de Shumard</translation>
    </message>
    <message>
        <source>shingle oak</source>
        <translation>roble tejamanil</translation>
    </message>
    <message>
        <source>blackjack oak</source>
        <translation>roble blackjack</translation>
    </message>
    <message>
        <source>water oak</source>
        <translation>roble de agua</translation>
    </message>
    <message>
        <source>willow oak</source>
        <translation>roble sauce</translation>
    </message>
    <message>
        <source>Nuttall oak</source>
        <translation>roble de Nuttall</translation>
    </message>
    <message>
        <source>red oak group (species not told)</source>
        <translation>robles rojos (especie no dicha)</translation>
    </message>
    <message>
        <source>oak (group not told)</source>
        <translation>roble (grupo no dicho)</translation>
    </message>
    <message>
        <source>shagbark hickory</source>
        <translation>nogal de corteza escamosa</translation>
    </message>
    <message>
        <source>bitternut hickory</source>
        <translation>nogal amargo</translation>
    </message>
    <message>
        <source>pignut hickory</source>
        <translation>nogal de puerco</translation>
    </message>
    <message>
        <source>mockernut hickory</source>
        <translation>nogal velloso</translation>
    </message>
    <message>
        <source>shellbark hickory</source>
        <translation>nogal escamoso grande</translation>
    </message>
    <message>
        <source>black hickory</source>
        <translation>nogal negro de Texas</translation>
    </message>
    <message>
        <source>water hickory</source>
        <translation>nogal de agua</translation>
    </message>
    <message>
        <source>pecan</source>
        <translation>pacana</translation>
    </message>
    <message>
        <source>hickory (species not told)</source>
        <translation>nogal carya (especie no dicha)</translation>
    </message>
    <message>
        <source>black walnut</source>
        <translation>nogal negro</translation>
    </message>
    <message>
        <source>butternut</source>
        <translation>nogal blanco</translation>
    </message>
    <message>
        <source>sugar maple</source>
        <translation>arce de azúcar</translation>
    </message>
    <message>
        <source>black maple</source>
        <translation>arce negro</translation>
    </message>
    <message>
        <source>red maple</source>
        <translation>arce rojo</translation>
    </message>
    <message>
        <source>silver maple</source>
        <translation>arce plateado</translation>
    </message>
    <message>
        <source>boxelder</source>
        <translation>arce negundo</translation>
    </message>
    <message>
        <source>striped maple</source>
        <translation>arce rayado</translation>
    </message>
    <message>
        <source>Norway maple</source>
        <translation>arce de Noruega</translation>
    </message>
    <message>
        <source>maple (species not told)</source>
        <translation>arce (especie no dicha)</translation>
    </message>
    <message>
        <source>yellow birch</source>
        <translation>abedul amarillo</translation>
    </message>
    <message>
        <source>sweet birch</source>
        <translation>abedul dulce</translation>
    </message>
    <message>
        <source>paper birch</source>
        <translation>abedul de papel</translation>
    </message>
    <message>
        <source>river birch</source>
        <translation>abedul de río</translation>
    </message>
    <message>
        <source>gray birch</source>
        <translation>abedul gris</translation>
    </message>
    <message>
        <source>birch (species not told)</source>
        <translation>abedul (especie no dicha)</translation>
    </message>
    <message>
        <source>white ash</source>
        <translation>fresno blanco</translation>
    </message>
    <message>
        <source>black ash</source>
        <translation>fresno negro</translation>
    </message>
    <message>
        <source>green ash</source>
        <translation>fresno verde</translation>
    </message>
    <message>
        <source>blue ash</source>
        <translation>fresno azul</translation>
    </message>
    <message>
        <source>ash (species not told)</source>
        <translation>fresno (especie no dicha)</translation>
    </message>
    <message>
        <source>quaking aspen</source>
        <translation>álamo temblón</translation>
    </message>
    <message>
        <source>bigtooth aspen</source>
        <translation>álamo dentado</translation>
    </message>
    <message>
        <source>balsam poplar</source>
        <translation>álamo balsámico</translation>
    </message>
    <message>
        <source>eastern cottonwood</source>
        <translation>álamo del este</translation>
    </message>
    <message>
        <source>white poplar</source>
        <translation>álamo blanco</translation>
    </message>
    <message>
        <source>aspen or cottonwood (species not told)</source>
        <translation>álamo (especie no dicha)</translation>
    </message>
    <message>
        <source>black willow</source>
        <translation>sauce negro</translation>
    </message>
    <message>
        <source>willow (species not told)</source>
        <translation>sauce (especie no dicha)</translation>
    </message>
    <message>
        <source>alder (species not told)</source>
        <translation>aliso (especie no dicha)</translation>
    </message>
    <message>
        <source>American elm</source>
        <translation>olmo americano</translation>
    </message>
    <message>
        <source>slippery elm</source>
        <translation>olmo rojo</translation>
    </message>
    <message>
        <source>rock elm</source>
        <translation>olmo de roca</translation>
    </message>
    <message>
        <source>winged elm</source>
        <translation>olmo alado</translation>
    </message>
    <message>
        <source>Siberian elm</source>
        <translation>olmo siberiano</translation>
    </message>
    <message>
        <source>elm (species not told)</source>
        <translation>olmo (especie no dicha)</translation>
    </message>
    <message>
        <source>hackberry</source>
        <translation>almez</translation>
    </message>
    <message>
        <source>sugarberry</source>
        <translation>almez del sur</translation>
    </message>
    <message>
        <source>American beech</source>
        <translation>haya</translation>
    </message>
    <message>
        <source>American chestnut</source>
        <translation>castaño americano</translation>
    </message>
    <message>
        <source>black cherry</source>
        <translation>cerezo negro</translation>
    </message>
    <message>
        <source>pin cherry</source>
        <translation>cerezo de pin</translation>
    </message>
    <message>
        <source>chokecherry</source>
        <translation>cerezo silvestre</translation>
    </message>
    <message>
        <source>American plum</source>
        <translation>ciruelo americano</translation>
    </message>
    <message>
        <source>cherry or plum (species not told)</source>
        <translation>cerezo o ciruelo (especie no dicha)</translation>
    </message>
    <message>
        <source>serviceberry (species not told)</source>
        <translation>guillomo (especie no dicha)</translation>
    </message>
    <message>
        <source>hawthorn (species not told)</source>
        <translation>espino (especie no dicha)</translation>
    </message>
    <message>
        <source>apple or crab apple (species not told)</source>
        <translation>manzano (especie no dicha)</translation>
    </message>
    <message>
        <source>Callery pear</source>
        <translation>peral de Callery</translation>
    </message>
    <message>
        <source>American basswood</source>
        <translation>tilo americano</translation>
    </message>
    <message>
        <source>yellow-poplar</source>
        <translation>tulípero</translation>
    </message>
    <message>
        <source>cucumbertree</source>
        <translation>magnolia pepino</translation>
    </message>
    <message>
        <source>magnolia (species not told)</source>
        <translation>magnolia (especie no dicha)</translation>
    </message>
    <message>
        <source>sweetgum</source>
        <translation>liquidámbar</translation>
    </message>
    <message>
        <source>American sycamore</source>
        <translation>sicómoro</translation>
    </message>
    <message>
        <source>blackgum</source>
        <translation>tupelo negro</translation>
    </message>
    <message>
        <source>water tupelo</source>
        <translation>tupelo de agua</translation>
    </message>
    <message>
        <source>black locust</source>
        <translation>robinia</translation>
    </message>
    <message>
        <source>honeylocust</source>
        <translation>acacia de tres espinas</translation>
    </message>
    <message>
        <source>Kentucky coffeetree</source>
        <translation>cafetero de Kentucky</translation>
    </message>
    <message>
        <source>eastern redbud</source>
        <translation>árbol de Judas</translation>
    </message>
    <message>
        <source>sassafras</source>
        <translation>sasafrás</translation>
    </message>
    <message>
        <source>common persimmon</source>
        <translation>caqui silvestre</translation>
    </message>
    <message>
        <source>sourwood</source>
        <translation>árbol agrio</translation>
    </message>
    <message>
        <source>eastern hophornbeam</source>
        <translation>ostria</translation>
    </message>
    <message>
        <source>American hornbeam</source>
        <translation>carpe americano</translation>
    </message>
    <message>
        <source>flowering dogwood</source>
        <translation>cornejo florido</translation>
    </message>
    <message>
        <source>American holly</source>
        <translation>acebo americano</translation>
    </message>
    <message>
        <source>pawpaw</source>
        <translation>papayo del norte</translation>
    </message>
    <message>
        <source>Ohio buckeye</source>
        <translation>castaño de Ohio</translation>
    </message>
    <message>
        <source>yellow buckeye</source>
        <translation>castaño amarillo</translation>
    </message>
    <message>
        <source>northern catalpa</source>
        <translation>catalpa</translation>
    </message>
    <message>
        <source>Osage-orange</source>
        <translation>naranjo de Luisiana</translation>
    </message>
    <message>
        <source>red mulberry</source>
        <translation>morera roja</translation>
    </message>
    <message>
        <source>white mulberry</source>
        <translation>morera blanca</translation>
    </message>
    <message>
        <source>tree-of-heaven</source>
        <translation>árbol del cielo</translation>
    </message>
    <message>
        <source>paulownia</source>
        <translation>paulonia</translation>
    </message>
    <message>
        <source>common buckthorn</source>
        <translation>espino cerval</translation>
    </message>
    <message>
        <source>Amur honeysuckle</source>
        <translation>madreselva de Amur</translation>
    </message>
    <message>
        <source>common pricklyash</source>
        <translation>fresno espinoso</translation>
    </message>
    <message>
        <source>eastern white pine</source>
        <translation>pino blanco</translation>
    </message>
    <message>
        <source>red pine</source>
        <translation>pino rojo</translation>
    </message>
    <message>
        <source>jack pine</source>
        <translation>pino de Banks</translation>
    </message>
    <message>
        <source>shortleaf pine</source>
        <translation>pino de hoja corta</translation>
    </message>
    <message>
        <source>loblolly pine</source>
        <translation>pino taeda</translation>
    </message>
    <message>
        <source>Virginia pine</source>
        <translation>pino de Virginia</translation>
    </message>
    <message>
        <source>pitch pine</source>
        <translation>pino rígido</translation>
    </message>
    <message>
        <source>Scotch pine</source>
        <translation>pino silvestre</translation>
    </message>
    <message>
        <source>pine (species not told)</source>
        <translation>pino (especie no dicha)</translation>
    </message>
    <message>
        <source>eastern hemlock</source>
        <translation>tsuga</translation>
    </message>
    <message>
        <source>balsam fir</source>
        <translation>abeto balsámico</translation>
    </message>
    <message>
        <source>white spruce</source>
        <translation>pícea blanca</translation>
    </message>
    <message>
        <source>black spruce</source>
        <translation>pícea negra</translation>
    </message>
    <message>
        <source>red spruce</source>
        <translation>pícea roja</translation>
    </message>
    <message>
        <source>Norway spruce</source>
        <translation>pícea de Noruega</translation>
    </message>
    <message>
        <source>spruce (species not told)</source>
        <translation>pícea (especie no dicha)</translation>
    </message>
    <message>
        <source>tamarack</source>
        <translation>alerce</translation>
    </message>
    <message>
        <source>northern white-cedar</source>
        <translation>tuya</translation>
    </message>
    <message>
        <source>eastern redcedar</source>
        <translation>cedro rojo</translation>
    </message>
    <message>
        <source>baldcypress</source>
        <translation>ciprés calvo</translation>
    </message>
    <message>
        <source>other hardwood (live, not listed)</source>
        <translation>otra de hoja ancha (viva)</translation>
    </message>
    <message>
        <source>other softwood (live, not listed)</source>
        <translation>otra conífera (viva)</translation>
    </message>
    <message>
        <source>unknown dead hardwood</source>
        <translation>muerta de hoja ancha</translation>
    </message>
    <message>
        <source>unknown dead softwood</source>
        <translation>conífera muerta</translation>
    </message>
    <message>
        <source>unknown tree</source>
        <translation>árbol desconocido</translation>
    </message>
</context>
<context>
    <name>Joined</name>
    <message>
        <source>yes</source>
        <translation>sí</translation>
    </message>
    <message>
        <source>no</source>
        <translation>no</translation>
    </message>
    <message>
        <source>tract</source>
        <translation>predio</translation>
    </message>
    <message>
        <source>stand</source>
        <translation>rodal</translation>
    </message>
    <message>
        <source>cruise</source>
        <translation>inventario</translation>
    </message>
    <message>
        <source>plot</source>
        <translation>parcela</translation>
    </message>
    <message>
        <source>tree on plot</source>
        <translation>árbol en parcela</translation>
    </message>
    <message>
        <source>seedling count on plot</source>
        <translation>conteo de plántulas en parcela</translation>
    </message>
    <message>
        <source>tree with tag</source>
        <translation>árbol con etiqueta</translation>
    </message>
    <message>
        <source>neighbour of tree</source>
        <translation>vecino del árbol</translation>
    </message>
    <message>
        <source>mark of tree</source>
        <translation>marca del árbol</translation>
    </message>
    <message>
        <source>map line</source>
        <translation>línea del mapa</translation>
    </message>
    <message>
        <source>finding after the cut, tree</source>
        <translation>hallazgo tras la corta, árbol</translation>
    </message>
    <message>
        <source>acorn count of tree</source>
        <translation>conteo de bellotas del árbol</translation>
    </message>
    <message>
        <source>acorn year</source>
        <translation>año de bellotas</translation>
    </message>
    <message>
        <source>form</source>
        <translation>formulario</translation>
    </message>
    <message>
        <source>place</source>
        <translation>lugar</translation>
    </message>
    <message>
        <source>DBH</source>
        <translation>DAP</translation>
    </message>
    <message>
        <source>least DBH</source>
        <translation>DAP mínimo</translation>
    </message>
    <message>
        <source>species</source>
        <translation>especie</translation>
    </message>
    <message>
        <source>acres</source>
        <translation>acres</translation>
    </message>
    <message>
        <source>acres walked</source>
        <translation>acres recorridos</translation>
    </message>
    <message>
        <source>decided by hand</source>
        <translation>decidido a mano</translation>
    </message>
    <message>
        <source>crop tree</source>
        <translation>árbol selecto</translation>
    </message>
    <message>
        <source>status</source>
        <translation>estado</translation>
    </message>
    <message>
        <source>note</source>
        <translation>nota</translation>
    </message>
    <message>
        <source>crown class</source>
        <translation>clase de copa</translation>
    </message>
    <message>
        <source>live crown</source>
        <translation>copa viva</translation>
    </message>
    <message>
        <source>dieback</source>
        <translation>muerte regresiva</translation>
    </message>
    <message>
        <source>height</source>
        <translation>altura</translation>
    </message>
    <message>
        <source>half logs</source>
        <translation>medias trozas</translation>
    </message>
    <message>
        <source>conditions</source>
        <translation>condiciones</translation>
    </message>
    <message>
        <source>azimuth</source>
        <translation>acimut</translation>
    </message>
    <message>
        <source>distance</source>
        <translation>distancia</translation>
    </message>
    <message>
        <source>tag</source>
        <translation>etiqueta</translation>
    </message>
    <message>
        <source>label</source>
        <translation>rótulo</translation>
    </message>
    <message>
        <source>name</source>
        <translation>nombre</translation>
    </message>
    <message>
        <source>goal</source>
        <translation>meta</translation>
    </message>
    <message>
        <source>verdict</source>
        <translation>veredicto</translation>
    </message>
    <message>
        <source>method</source>
        <translation>método</translation>
    </message>
    <message>
        <source>product</source>
        <translation>producto</translation>
    </message>
    <message>
        <source>destination</source>
        <translation>destino</translation>
    </message>
    <message>
        <source>reason</source>
        <translation>razón</translation>
    </message>
    <message>
        <source>rules</source>
        <translation>reglas</translation>
    </message>
    <message>
        <source>rule version</source>
        <translation>versión de las reglas</translation>
    </message>
    <message>
        <source>stems</source>
        <translation>tallos</translation>
    </message>
    <message>
        <source>edge count</source>
        <translation>conteo de borde</translation>
    </message>
    <message>
        <source>slope</source>
        <translation>pendiente</translation>
    </message>
    <message>
        <source>accuracy</source>
        <translation>precisión</translation>
    </message>
    <message>
        <source>skip reason</source>
        <translation>razón de omisión</translation>
    </message>
    <message>
        <source>count</source>
        <translation>cuenta</translation>
    </message>
    <message>
        <source>seen</source>
        <translation>visto</translation>
    </message>
    <message>
        <source>sides</source>
        <translation>lados</translation>
    </message>
    <message>
        <source>units</source>
        <translation>unidades</translation>
    </message>
    <message>
        <source>county</source>
        <translation>condado</translation>
    </message>
    <message>
        <source>state</source>
        <translation>estado</translation>
    </message>
    <message>
        <source>contact</source>
        <translation>contacto</translation>
    </message>
    <message>
        <source>directions</source>
        <translation>cómo llegar</translation>
    </message>
    <message>
        <source>meeting place</source>
        <translation>lugar de encuentro</translation>
    </message>
    <message>
        <source>phone place</source>
        <translation>lugar con señal</translation>
    </message>
    <message>
        <source>text</source>
        <translation>texto</translation>
    </message>
    <message>
        <source>version</source>
        <translation>versión</translation>
    </message>
    <message>
        <source>path</source>
        <translation>ruta</translation>
    </message>
    <message>
        <source>year</source>
        <translation>año</translation>
    </message>
    <message>
        <source>crop</source>
        <translation>cosecha</translation>
    </message>
    <message>
        <source>source</source>
        <translation>fuente</translation>
    </message>
    <message>
        <source>crew</source>
        <translation>cuadrilla</translation>
    </message>
    <message>
        <source>date</source>
        <translation>fecha</translation>
    </message>
    <message>
        <source>design</source>
        <translation>diseño</translation>
    </message>
    <message>
        <source>factor</source>
        <translation>factor</translation>
    </message>
    <message>
        <source>kind</source>
        <translation>clase</translation>
    </message>
    <message>
        <source>confirmed</source>
        <translation>confirmado</translation>
    </message>
    <message>
        <source>finding</source>
        <translation>hallazgo</translation>
    </message>
    <message>
        <source>wound</source>
        <translation>herida</translation>
    </message>
    <message>
        <source>Choose the version that holds. The other stays in the history.</source>
        <translation>Elija la versión que vale. La otra queda en el historial.</translation>
    </message>
    <message>
        <source>Keep it, or remove it with all that belongs to it.</source>
        <translation>Consérvelo, o quítelo con todo lo que le pertenece.</translation>
    </message>
    <message>
        <source>Find both trees. Give one of them a new tag, on the tree and here, before any list leaves the tract.</source>
        <translation>Busque ambos árboles. Dé a uno otra etiqueta, en el árbol y aquí, antes de que salga una lista del predio.</translation>
    </message>
    <message>
        <source>If it is one stand, put them together; if not, give one of them another name.</source>
        <translation>Si es un rodal, júntelos; si no, dé a uno otro nombre.</translation>
    </message>
    <message>
        <source>If it is one cruise, put them together; if not, give one of them another name.</source>
        <translation>Si es un inventario, júntelos; si no, dé a uno otro nombre.</translation>
    </message>
    <message>
        <source>Give one of them another label. A plot that was taken twice counts twice until one is removed.</source>
        <translation>Dé a una otro rótulo. Una parcela tomada dos veces cuenta dos veces hasta quitar una.</translation>
    </message>
</context>
</TS>
